package ortet.commands;

import java.util.List;
import java.util.Optional;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Arguments;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import ortet.entry.EntryKind;
import ortet.line.Word;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.screen.Screen;

/** Batches: split, put together, counted, closed. */
public final class BatchCommands {
    private final Recording recording;

    BatchCommands(Recording recording) {
        this.recording = recording;
    }

    @Command(
            name = "split",
            group = "Cuttings and batches",
            description = "take units from a batch into other batches",
            help = """
            What is pending goes first, then what is growing; the cohort stays the same.
            ortet split T-41 T-42 --from T-31 --count 20 --place "Mist bench"
            """)
    void split(
            @Arguments @Word(value = "TAG", begins = true, description = "a new tag for each part") TagList tags,
            @Option(longName = "from", required = true, description = "the batch") Tag from,
            @Option(longName = "count", required = true, description = "how many into each part") int count,
            @Option(longName = "place", description = "where they stand now") Optional<Place> place,
            @Option(longName = "container", description = "what they were put into") Optional<String> container,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(
                Draft.of(EntryKind.SPLIT, tags.tags())
                        .put("source", from)
                        .put("count", count)
                        .put("place", place)
                        .put("container", container)
                        .put("note", hand.note()),
                hand,
                context,
                screen);
    }

    @Command(
            name = "merge",
            group = "Cuttings and batches",
            description = "put batches together under a new tag",
            help = """
            The old tags stay findable; of what is drawn later it is said that it is from one of them.
            ortet merge T-50 --from T-31,T-32 --place "Mist bench"
            """)
    void merge(
            @Arguments @Word(value = "TAG", begins = true, description = "the new tag") TagList tags,
            @Option(longName = "from", required = true, description = "the batches, at least two") List<Tag> from,
            @Option(longName = "place", description = "where they stand now") Optional<Place> place,
            @Option(longName = "container", description = "what they were put into") Optional<String> container,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(
                Draft.of(EntryKind.MERGED, tags.tags())
                        .list("sources", from)
                        .put("place", place)
                        .put("container", container)
                        .put("note", hand.note()),
                hand,
                context,
                screen);
    }

    @Command(
            name = "count",
            group = "Cuttings and batches",
            description = "say how many there are in a batch",
            help = """
            Fewer than thought: the missing pending ones count as not seen, the missing growing ones as lost. More: the cohort was larger.
            ortet count T-31 --there 57 --reason "two gone, one found"
            """)
    void count(
            @Arguments @Word(value = "TAG", description = "the batch") TagList tags,
            @Option(longName = "there", required = true, description = "how many there are") int there,
            @Option(longName = "reason", description = "why it was counted") Optional<String> reason,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(
                Draft.of(EntryKind.COUNTED, tags.tags())
                        .put("count", there)
                        .put("reason", reason)
                        .put("note", hand.note()),
                hand,
                context,
                screen);
    }

    @Command(
            name = "taken",
            group = "Cuttings and batches",
            description = "say that units have taken and stay under their tag",
            help = """
            Cuttings found rooted, grafts whose union held, seedlings. A layer takes when it is severed.
            ortet taken G-1..G-7
            ortet taken T-31 --count 40
            """)
    void taken(
            @Arguments @Word(value = "TAG", description = "the grafts or batches") TagList tags,
            @Option(longName = "count", description = "how many; all that are pending unless given")
                    Optional<Integer> count,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(
                Draft.of(EntryKind.TAKEN, tags.tags()).put("count", count).put("note", hand.note()),
                hand,
                context,
                screen);
    }
}
