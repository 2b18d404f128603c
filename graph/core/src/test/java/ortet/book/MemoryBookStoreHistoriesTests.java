package ortet.book;

class MemoryBookStoreHistoriesTests implements BookStoreHistories {
    @Override
    public BookStore emptyStore() {
        return new MemoryBookStore(ZONE);
    }
}
