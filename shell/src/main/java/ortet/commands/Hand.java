package ortet.commands;

import java.util.Optional;
import org.springframework.shell.core.command.annotation.Option;
import ortet.line.Word;
import ortet.value.When;

/**
 * What every recording says besides: the day, who did it, and anything else.
 *
 * @param on the day; today unless given
 * @param by who did it, by name or number
 * @param note anything else
 */
record Hand(
        @Option(longName = "on", description = "the day, month or year; today unless given")
        Optional<When> on,

        @Option(longName = "by", description = "who did it") @Word("PERSON")
        Optional<String> by,

        @Option(longName = "note", description = "anything else")
        Optional<String> note) {}
