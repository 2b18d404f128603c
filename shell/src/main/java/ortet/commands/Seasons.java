package ortet.commands;

import java.util.Optional;
import org.springframework.shell.core.command.annotation.Option;
import ortet.line.UsageException;
import ortet.line.Word;

/**
 * Of which cultivar and seasons a question by one method is.
 *
 * @param cultivar only this cultivar or taxon
 * @param from from this season on
 * @param to to this season
 */
record Seasons(
        @Option(
                longName = "cultivar",
                description = "only this cultivar, by its epithet or its whole name, or this taxon")
        Optional<String> cultivar,

        @Option(longName = "from", description = "from this season (year) on") @Word("YEAR")
        Optional<Integer> from,

        @Option(longName = "to", description = "to this season (year)") @Word("YEAR")
        Optional<Integer> to) {

    Seasons {
        inOrder(from, to);
    }

    /**
     * Refuse a first season after the last.
     *
     * @throws UsageException with both
     */
    static void inOrder(Optional<Integer> from, Optional<Integer> to) {
        if (from.isPresent() && to.isPresent() && from.get() > to.get()) {
            throw new UsageException(
                    "--from and --to: expected the first season and the last, found " + from.get() + " to " + to.get());
        }
    }
}
