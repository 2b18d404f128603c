package ortet.commands;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Arguments;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import ortet.book.BookStore;
import ortet.book.BookView;
import ortet.book.UnitFacts.Standing;
import ortet.entry.Cause;
import ortet.entry.EntryKind;
import ortet.entry.Rest;
import ortet.line.UsageException;
import ortet.line.Word;
import ortet.lineage.OnMother;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.plant.Tags;
import ortet.screen.Screen;
import ortet.value.Refused;
import ortet.work.Sighting;

/** Settling what is open: the rest of a cohort, and what stands at a place. */
public final class CohortCommands {
    private final Recording recording;
    private final Shelf shelf;

    CohortCommands(Recording recording, Shelf shelf) {
        this.recording = recording;
        this.shelf = shelf;
    }

    @Command(
            name = "close",
            group = "Cuttings and batches",
            description = "settle all that is still pending of a batch, or on a mother",
            help = """
            Of a mother all layers that are still on her are meant. A rate is honest only when failures are said too.
            ortet close T-31 --rest failed --cause damped-off
            ortet close K-12 --rest still-on
            ortet close K-13 --rest not-seen
            """)
    void close(
            @Arguments @Word(value = "TAG", description = "the batches, or the mothers whose layers are meant")
                    TagList tags,
            @Option(longName = "rest", required = true, description = "what becomes of it") Rest rest,
            @Option(longName = "cause", description = "why it failed") Optional<Cause> cause,
            Hand hand,
            CommandContext context,
            Screen screen) {
        List<Tag> open = shelf.open(context).read(view -> open(view, tags.tags()));
        recording.write(
                Draft.of(EntryKind.CLOSED, open)
                        .put("rest", rest)
                        .put("cause", cause)
                        .put("note", hand.note()),
                hand,
                context,
                screen);
    }

    /** Return the units meant: those named that are pending themselves, and the layers still on those named. */
    private static List<Tag> open(BookView view, List<Tag> tags) {
        Set<Tag> open = new LinkedHashSet<>();
        for (Tag tag : tags) {
            List<Tag> layers = OnMother.pendingLayers(view, List.of(tag));
            boolean known = view.unit(tag).isPresent();
            boolean pending = view.unit(tag)
                    .flatMap(view::facts)
                    .map(facts -> facts.standings().get(facts.standings().size() - 1))
                    .map(Standing::pending)
                    .map(count -> count.orElse(1) > 0)
                    .orElse(false);
            if (known && !pending && layers.isEmpty()) {
                throw Refused.because("nothing-pending", "nothing is pending under " + tag + ", and no layer is on it");
            }
            if (!known || pending) {
                open.add(tag);
            }
            open.addAll(layers);
        }
        return List.copyOf(open);
    }

    @Command(
            name = "seen",
            group = "Plants",
            description = "say what was seen at a place, and learn what is missing there",
            help = """
            Type or scan the tags, on the line or one after another in a file or on standard input (--from -). What should
            stand there and was not seen is told, and what should not; what was seen is recorded with the place.
            ortet seen "House 1" J-201..J-204 --by Aoife
            ortet seen "House 2" --from scanned.txt
            ortet seen "House 1" J-201 --only-tell
            """)
    void seen(
            @Argument(index = 0, description = "the place; places within it are meant too") @Word("PLACE") Place place,
            @Arguments @Word(value = "TAG", optional = true, description = "the tags seen") List<String> words,
            @Option(
                            longName = "from",
                            description = "a file with tags, by blanks, commas or lines; - is standard input")
                    Optional<Path> from,
            @Option(longName = "only-tell", description = "record nothing") boolean onlyTell,
            Hand hand,
            CommandContext context,
            Screen screen)
            throws IOException {
        List<String> all = new ArrayList<>(words);
        if (from.isPresent()) {
            String text = Files.readString(from.get().toString().equals("-") ? Path.of("/dev/stdin") : from.get());
            all.addAll(List.of(text.strip().split("[\\s,;]+")));
        }
        all.removeIf(String::isBlank);
        if (all.isEmpty()) {
            throw new UsageException("seen needs tags: on the line, or with --from FILE");
        }
        Set<Tag> tags = new LinkedHashSet<>();
        for (Tag tag : read(all)) {
            tags.add(tag);
        }
        BookStore store = shelf.open(context);
        LocalDate day = recording.day(hand.on(), store);
        Sighting sighting = store.read(view -> Sighting.of(view, place, tags, day));
        tell(sighting, screen);
        if (!onlyTell && !sighting.seen().isEmpty()) {
            screen.println();
            recording.write(
                    Draft.of(EntryKind.SEEN, sighting.seen())
                            .put("place", place)
                            .put("note", hand.note()),
                    hand,
                    context,
                    screen);
        }
    }

    /** Read tags; a scanner may send the same one twice. */
    private static List<Tag> read(List<String> words) {
        if (words.stream().anyMatch(word -> word.contains("..") || word.equalsIgnoreCase("except"))) {
            return Tags.parse(words);
        }
        return words.stream().map(Tag::new).toList();
    }

    private static void tell(Sighting sighting, Screen screen) {
        screen.prose(
                Counts.of(sighting.there().size(), "unit", "units") + " seen at " + sighting.place() + " as expected");
        if (!sighting.missing().isEmpty()) {
            screen.hanging(
                    "missing    ",
                    " ".repeat(11),
                    Counts.of(sighting.missing().size(), "unit", "units") + ": "
                            + Tags.brief(sighting.missing().stream()
                                    .map(Sighting.Expected::tag)
                                    .toList()));
        }
        for (Sighting.Stranger stranger : sighting.strangers()) {
            screen.hanging(
                    "not here   ",
                    " ".repeat(11),
                    stranger.tag() + ", by the book "
                            + stranger.elsewhere().map(place -> "at " + place).orElse("in no place"));
        }
        for (Tag tag : sighting.gone()) {
            screen.hanging("gone       ", " ".repeat(11), tag + ", by the book; see \"ortet plant " + tag + "\"");
        }
        for (Sighting.Unknown unknown : sighting.unknown()) {
            screen.hanging(
                    "unknown    ",
                    " ".repeat(11),
                    unknown.tag() + " is not in the book"
                            + (unknown.nearest().isEmpty()
                                    ? ""
                                    : "; nearest: " + String.join(", ", unknown.nearest())));
        }
    }
}
