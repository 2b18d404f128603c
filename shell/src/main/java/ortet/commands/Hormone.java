package ortet.commands;

import java.util.Optional;
import org.springframework.shell.core.command.annotation.Option;
import ortet.entry.Carrier;
import ortet.value.Strength;

/**
 * A rooting hormone.
 *
 * @param hormone active substance
 * @param strength its strength
 * @param carrier what carries it
 */
record Hormone(
        @Option(longName = "hormone", description = "active substance of the hormone")
        Optional<String> hormone,

        @Option(longName = "strength", description = "its strength, 0.3% or 3000ppm")
        Optional<Strength> strength,

        @Option(longName = "carrier", description = "what carries it")
        Optional<Carrier> carrier) {

    /** Put the hormone into an entry. */
    Draft into(Draft draft) {
        return draft.put("hormone", hormone).put("strength", strength).put("carrier", carrier);
    }
}
