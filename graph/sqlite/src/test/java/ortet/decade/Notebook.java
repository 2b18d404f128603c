package ortet.decade;

import java.util.List;

/** Where happenings are written down. */
interface Notebook extends AutoCloseable {
    /** Write entries at one go, each as {@link ortet.book.Diary} reads it. */
    void write(List<String> lines);

    @Override
    void close();

    /** A notebook of one who needs none. */
    Notebook NONE = new Notebook() {
        @Override
        public void write(List<String> lines) {}

        @Override
        public void close() {}
    };
}
