package ortet.commands;

import java.util.Optional;
import org.springframework.shell.core.command.annotation.Option;
import ortet.book.UnitFacts.Method;
import ortet.line.Word;
import ortet.plant.Tag;
import ortet.yield.TakeFilter;

/**
 * What a question about units that were set counts.
 *
 * @param cultivar only this cultivar or taxon
 * @param mother only from this mother
 * @param method only by this method
 * @param from from this season on
 * @param to to this season
 * @param operator only by this person
 */
record Filtered(
        @Option(
                longName = "cultivar",
                description = "only this cultivar, by its epithet or its whole name, or this taxon")
        Optional<String> cultivar,

        @Option(longName = "mother", description = "only from this mother")
        Optional<Tag> mother,

        @Option(longName = "method", description = "only by this method")
        Optional<Method> method,

        @Option(longName = "from", description = "from this season (year) on") @Word("YEAR")
        Optional<Integer> from,

        @Option(longName = "to", description = "to this season (year)") @Word("YEAR")
        Optional<Integer> to,

        @Option(longName = "operator", description = "only by this person") @Word("PERSON")
        Optional<String> operator) {

    Filtered {
        Seasons.inOrder(from, to);
    }

    TakeFilter filter() {
        return new TakeFilter(cultivar, mother, method, from, to, operator);
    }
}
