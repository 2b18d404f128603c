package ortet.commands;

import java.util.List;
import java.util.Optional;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Arguments;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import ortet.entry.EntryKind;
import ortet.line.Word;
import ortet.plant.CultivarName;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.screen.Screen;

/** Labels and names: tied on anew, put right, lost. */
public final class IdentityCommands {
    private final Recording recording;

    IdentityCommands(Recording recording) {
        this.recording = recording;
    }

    @Command(name = "retag", group = "Labels and names", description = "tie a new label on a unit", help = """
            The old tag stays findable, and is never given to another.
            ortet retag J-201 --to J-901
            """)
    void retag(
            @Arguments @Word(value = "TAG", description = "the tag that it bears now") TagList tags,
            @Option(longName = "to", required = true, description = "the new tag") @Word(begins = true) Tag to,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(
                Draft.of(EntryKind.RETAGGED, tags.tags()).put("new_tag", to).put("note", hand.note()),
                hand,
                context,
                screen);
    }

    @Command(
            name = "redetermine",
            group = "Labels and names",
            description = "say what cultivar plants truly are",
            help = """
            Counts from that day for the plants and, by its link, for all that keep their clone.
            ortet redetermine K-12 --as "Acer palmatum 'Katsura'"
            """)
    void redetermine(
            @Arguments @Word(value = "TAG", description = "the plants") TagList tags,
            @Option(longName = "as", required = true, description = "the true name") CultivarName name,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(
                Draft.of(EntryKind.REDETERMINED, tags.tags())
                        .put("cultivar", name)
                        .put("note", hand.note()),
                hand,
                context,
                screen);
    }

    @Command(
            name = "found",
            group = "Labels and names",
            description = "tag a plant found without its label",
            help = """
            It is one of those that it may be; every answer says so.
            ortet found F-1 --one-of J-201,J-202 --place "House 1"
            """)
    void found(
            @Arguments @Word(value = "TAG", begins = true, description = "a new tag") TagList tags,
            @Option(longName = "one-of", required = true, description = "what it may be, at least two") List<Tag> oneOf,
            @Option(longName = "place", description = "where it was found") Optional<Place> place,
            Hand hand,
            CommandContext context,
            Screen screen) {
        recording.write(
                Draft.of(EntryKind.FOUND_UNTAGGED, tags.tags())
                        .list("candidates", oneOf)
                        .put("place", place)
                        .put("note", hand.note()),
                hand,
                context,
                screen);
    }
}
