package ortet.commands;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Arguments;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import ortet.entry.Entry;
import ortet.entry.EntryKind;
import ortet.entry.Recorded;
import ortet.line.Word;
import ortet.plant.Place;
import ortet.plant.Tags;
import ortet.screen.Screen;
import ortet.value.Refused;
import ortet.value.When;

/** What holds for the lines to come, and taking back the last one. */
public final class SittingCommands {
    private static final String GROUP = "At the prompt";

    private final Sitting sitting;
    private final Recording recording;
    private final Shelf shelf;

    SittingCommands(Sitting sitting, Recording recording, Shelf shelf) {
        this.sitting = sitting;
        this.recording = recording;
        this.shelf = shelf;
    }

    /** What can be remembered. */
    enum What {
        /** Who did it. */
        BY,
        /** The day. */
        ON,
        /** Where. */
        PLACE,
        /** Which book. */
        BOOK
    }

    @Command(
            name = "use",
            group = GROUP,
            description = "set person, day, place and book for the lines to come, or show them",
            help = """
            They are taken for every recording that is not told otherwise, until the prompt is left or the file of lines ends;
            the prompt shows them, and so does every line that takes them. --book FILE sets the book. Without anything it
            shows what is set.
            ortet use --by Aoife --on yesterday --place "House 1"
            ortet use
            """)
    void use(
            @Option(longName = "by", description = "who does it") @Word("PERSON") Optional<String> by,
            @Option(longName = "on", description = "the day; today sets none") Optional<When> on,
            @Option(longName = "place", description = "where it is done, and where things stand afterwards")
                    Optional<Place> place,
            CommandContext context,
            Screen screen) {
        Optional<Whereabouts> book = context.parsedInput().options().stream()
                .filter(option -> option.longName().equals(Shelf.OPTION))
                .map(option -> new Whereabouts(option.value()))
                .findFirst();
        if (book.isPresent()) {
            shelf.open(context);
        }
        Optional<String> person =
                by.map(name -> Recording.person(shelf.open(context), name, "by").shown());
        if (book.isPresent() && !book.get().equals(shelf.path(Optional.empty()))) {
            sitting.book(book);
            if (person.isEmpty() && sitting.by().isPresent()) {
                sitting.by(Optional.empty());
                screen.prose("another book: the person is set no longer");
            }
        }
        person.ifPresent(name -> sitting.by(Optional.of(name)));
        place.ifPresent(where -> sitting.place(Optional.of(where)));
        on.ifPresent(day -> sitting.on(Optional.of(day).filter(when -> !when.equals(When.on(recording.today())))));
        show(screen);
    }

    @Command(name = "forget", group = GROUP, description = "set person, day, place or book no longer", help = """
            Without anything all of them. Nothing in the book is touched.
            ortet forget
            ortet forget place on
            """)
    void forget(
            @Arguments @Word(value = "WHAT", optional = true, description = "what is to be set no longer")
                    List<What> what,
            Screen screen) {
        for (What one : what.isEmpty() ? List.of(What.values()) : what) {
            switch (one) {
                case BY -> sitting.by(Optional.empty());
                case ON -> sitting.on(Optional.empty());
                case PLACE -> sitting.place(Optional.empty());
                case BOOK -> sitting.book(Optional.empty());
            }
        }
        show(screen);
    }

    private void show(Screen screen) {
        List<String> set = new ArrayList<>();
        sitting.by().ifPresent(name -> set.add("by " + name));
        sitting.on().ifPresent(day -> set.add("on " + day));
        sitting.place().ifPresent(where -> set.add("at " + where));
        sitting.book().ifPresent(file -> set.add("in " + file));
        screen.prose(
                set.isEmpty()
                        ? "nothing is set for the lines to come"
                        : "for the lines to come: " + String.join(", ", set));
    }

    @Command(name = "undo", group = GROUP, description = "take back what the last line recorded", help = """
            Crosses out every entry that it wrote; they stay readable. Refused while something else rests on them. Older
            entries are crossed out by number.
            ortet undo
            ortet undo --reason "wrong mother"
            """)
    void undo(
            @Option(longName = "reason", defaultValue = "taken back at once", description = "why") String reason,
            CommandContext context,
            Screen screen) {
        Sitting.Written last = sitting.last()
                .orElseThrow(() -> Refused.because(
                        "nothing-recorded",
                        "nothing was recorded since ortet was started; an older entry is taken back by its number:"
                                + " cross-out N --reason TEXT"));
        if (!last.book().equals(shelf.path(context))) {
            throw Refused.because(
                    "another-book", "the last line was recorded in " + last.book() + "; name it with --book");
        }
        if (last.lasting().isPresent()) {
            throw Refused.because("lasting", "the last line " + last.lasting().get() + ", which stays");
        }
        Optional<Recorded> amendment = last.entries().stream()
                .filter(recorded -> recorded.entry().kind().phase() == EntryKind.Phase.AMENDMENT)
                .findFirst();
        if (amendment.isPresent()) {
            throw Refused.because("no-amending-amendments", amends(amendment.get()));
        }
        List<Recorded> backwards = new ArrayList<>(last.entries());
        Collections.reverse(backwards);
        List<Entry> crossings = new ArrayList<>();
        for (Recorded recorded : backwards) {
            crossings.add(Draft.of(EntryKind.CROSSED_OUT)
                    .put("target", recorded.proposed().id())
                    .put("reason", reason)
                    .entry());
        }
        recording.takeBack(crossings, context);
        for (Recorded recorded : last.entries()) {
            Entry entry = recorded.entry();
            screen.hanging(
                    "",
                    "    ",
                    "taken back: #" + recorded.order() + "  " + entry.kind().word()
                            + (entry.tags().isEmpty() ? "" : " " + Tags.brief(entry.tags()))
                            + (entry.tags().size() > 1 ? " (" + entry.tags().size() + ")" : ""));
        }
    }

    private static String amends(Recorded amendment) {
        return amendment.entry().kind() == EntryKind.CORRECTED
                ? "the last line was a correction (#" + amendment.order()
                        + "), which cannot be crossed out; correct the field again"
                : "the last line was a crossing out (#" + amendment.order()
                        + "), which cannot be taken back; record what was crossed out again";
    }
}
