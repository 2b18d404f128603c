package ortet.commands;

import java.time.LocalDate;
import java.util.Optional;
import org.springframework.shell.core.command.annotation.Option;
import ortet.book.BookStore;
import ortet.book.Judge;
import ortet.screen.OutputFormat;

/**
 * What every question takes: the day as of which it is answered, and the format of the answer.
 *
 * @param asOf the day; today unless given
 * @param format how to answer
 */
record Asked(
        @Option(longName = "as-of", description = "the day as of which it is answered; today unless given")
        Optional<LocalDate> asOf,

        @Option(longName = "format", defaultValue = "table", description = "how to answer")
        OutputFormat format) {

    /** Return the day as of which a question on a book is answered. */
    LocalDate day(BookStore store, Judge judge) {
        return asOf.orElseGet(() -> store.read(view -> judge.today(view.head())));
    }
}
