package ortet.nursery;

import java.time.Instant;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import ortet.book.BookStore;
import ortet.book.BookView;
import ortet.book.CanonicalText;
import ortet.book.Chained;
import ortet.book.ForwardingView;
import ortet.book.Parameters;
import ortet.book.QueryName;
import ortet.book.Rows;
import ortet.entry.Recorded;

/** A book as if a minute had gone by from each entry to the next. */
final class Ticking {
    private static final Instant BEGIN = Instant.parse("2026-01-01T00:00:00Z");

    private final BookStore store;

    Ticking(BookStore store) {
        this.store = store;
    }

    static Instant instant(long order) {
        return BEGIN.plusSeconds(60 * order);
    }

    <T> T read(Function<BookView, T> question) {
        return store.read(view -> question.apply(new Apart(view)));
    }

    private static final class Apart extends ForwardingView {
        Apart(BookView view) {
            super(view);
        }

        @Override
        public Stream<Chained> since(long order) {
            return super.since(order).map(entry -> new Chained(at(entry.recorded()), entry.digest()));
        }

        private static Recorded at(Recorded recorded) {
            return new Recorded(recorded.order(), instant(recorded.order()), recorded.proposed());
        }

        @Override
        public Rows ask(QueryName name, Parameters parameters) {
            if (!name.name().equals("order-by-instant")) {
                return super.ask(name, parameters);
            }
            Optional<Object> text = parameters.values().get("instant");
            Instant instant = CanonicalText.INSTANT.parse((String) text.orElseThrow(), Instant::from);
            long last = Math.min(head().order(), (instant.getEpochSecond() - BEGIN.getEpochSecond()) / 60);
            return new Rows(
                    java.util.List.of("recorded_order"), java.util.List.of(java.util.List.of(Math.max(0L, last))));
        }
    }
}
