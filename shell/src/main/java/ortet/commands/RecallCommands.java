package ortet.commands;

import java.time.LocalDate;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Arguments;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import ortet.book.BookStore;
import ortet.book.Judge;
import ortet.entry.EntryKind;
import ortet.line.UsageException;
import ortet.line.Word;
import ortet.lineage.Finding;
import ortet.lineage.Recall;
import ortet.lineage.RecallQuestion;
import ortet.lineage.Route;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.plant.Tags;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;
import ortet.value.Refused;

/** When a plant is sick: what must be pulled, who must be called. */
public final class RecallCommands {
    private final Shelf shelf;
    private final Judge judge;
    private final Recording recording;

    RecallCommands(Shelf shelf, Judge judge, Recording recording) {
        this.shelf = shelf;
        this.judge = judge;
        this.recording = recording;
    }

    /** What is written into the book. */
    enum Mark {
        /** Both lists. */
        HELD,
        /** What is implicated alone. */
        HELD_IMPLICATED
    }

    /**
     * Where a recall begins, besides tags.
     *
     * @param consignment a consignment
     * @param supplier a supplier
     * @param place a place
     * @param from the first day of it
     * @param to the last day of it
     */
    record Beginning(
            @Option(longName = "consignment", description = "what came with this consignment or delivery note")
            Optional<String> consignment,

            @Option(longName = "supplier", description = "what came from this supplier") @Word("PERSON")
            Optional<String> supplier,

            @Option(longName = "place", description = "what stood there, or in places within it")
            Optional<Place> place,

            @Option(longName = "from", description = "from this day on: the place, the deliveries")
            Optional<LocalDate> from,

            @Option(longName = "to", description = "to this day: the place, the deliveries")
            Optional<LocalDate> to) {}

    /**
     * Which way a recall goes.
     *
     * @param contacts rounds of contacts
     * @param tools the same hands too
     * @param since not before
     * @param acts by these
     * @param clonalOnly within the clone
     * @param noSources not up
     * @param unknownPlaces all that may have been there
     */
    record Way(
            @Option(
                    longName = "contacts",
                    defaultValue = "0",
                    description = "how many times to go on to what stood in the same place at the same time")
            @Word("N")
            int contacts,

            @Option(longName = "tools", description = "also to what the same person worked on the same day")
            boolean tools,

            @Option(longName = "since", description = "the disease was not there before this day")
            Optional<LocalDate> since,

            @Option(longName = "acts", description = "go by these relations alone; by all unless given")
            List<Route> acts,

            @Option(longName = "clonal-only", description = "go by those relations alone that keep the clone")
            boolean clonalOnly,

            @Option(
                    longName = "no-sources",
                    description = "do not go up to possible sources: it began with what is named")
            boolean noSources,

            @Option(
                    longName = "unknown-places",
                    description = "list all that may have stood with suspects whose place is not known")
            boolean unknownPlaces) {}

    @Command(
            name = "recall",
            group = "Questions",
            description = "tell what a disease may have reached: what to pull, whom to call",
            help = """
            From plants (sold ones too), a consignment, a supplier or a place, first up to every possible source, then down to
            all that was raised from these, whatever the act. --contacts 1 goes on to what stood beside them, never backwards
            in time; --contacts 2 to what stood beside those. Tell the plant health authority: this does not replace it. Do
            not move plants meanwhile.
            ortet recall K-12
            ortet recall --consignment 2024-17 --contacts 1 --format csv
            ortet recall --place "House 1" --from 2026-03-01 --to 2026-05-31 --no-sources
            ortet recall J-201 --since 2026-03-01 --contacts 2 --tools
            ortet recall K-12 --mark held --sign "leaf spots" --by Aoife
            """)
    void recall(
            @Arguments @Word(value = "TAG", optional = true, description = "the sick plants, layers or batches")
                    List<String> tags,
            Beginning beginning,
            Way way,
            @Option(
                            longName = "mark",
                            description =
                                    "record a hold on what is still here: of both lists, or of the implicated alone")
                    Optional<Mark> mark,
            @Option(longName = "sign", description = "what was seen; for the hold") Optional<String> sign,
            @Option(longName = "sample", description = "the number of a sample sent away; for the hold")
                    Optional<String> sample,
            Hand hand,
            Asked asked,
            CommandContext context,
            Screen screen) {
        BookStore store = shelf.open(context);
        check(mark, sign, sample, hand, asked);
        RecallQuestion question = question(tags, beginning, way, asked.day(store, judge));
        Recall recall = store.read(view -> Recall.of(view, question));
        screen.page(out -> RecallView.show(recall, asked.format(), out));
        mark.ifPresent(what -> hold(recall, what, sign.orElseThrow(), sample, hand, context, screen));
    }

    /** Return the question; one that cannot be put is told as wrong usage. */
    private static RecallQuestion question(List<String> tags, Beginning beginning, Way way, LocalDate day) {
        try {
            return new RecallQuestion(
                    tags.isEmpty() ? List.of() : Tags.parse(String.join(" ", tags)),
                    beginning.consignment(),
                    beginning.supplier(),
                    beginning.place(),
                    beginning.from(),
                    beginning.to(),
                    way.contacts(),
                    way.tools(),
                    way.since(),
                    new LinkedHashSet<>(way.acts()),
                    way.clonalOnly(),
                    !way.noSources(),
                    way.unknownPlaces(),
                    day);
        } catch (Refused wrong) {
            throw new UsageException(wrong.getMessage());
        }
    }

    private static void check(
            Optional<Mark> mark, Optional<String> sign, Optional<String> sample, Hand hand, Asked asked) {
        if (mark.isEmpty()) {
            boolean told = sign.isPresent()
                    || sample.isPresent()
                    || hand.on().isPresent()
                    || hand.by().isPresent()
                    || hand.note().isPresent();
            if (told) {
                throw new UsageException(
                        "--sign, --sample, --on, --by and --note are for a hold; it is recorded with --mark held");
            }
            return;
        }
        if (sign.isEmpty()) {
            throw new UsageException("--mark needs --sign TEXT: what was seen");
        }
        if (asked.asOf().isPresent()) {
            throw new UsageException("--mark holds what is here today: leave --as-of out");
        }
        if (asked.format() != OutputFormat.TABLE) {
            throw new UsageException("--mark answers in words: record the hold first, then ask again with --format");
        }
    }

    private void hold(
            Recall recall,
            Mark mark,
            String sign,
            Optional<String> sample,
            Hand hand,
            CommandContext context,
            Screen screen) {
        List<Finding> here = (mark == Mark.HELD ? recall.all() : recall.implicated().stream())
                .filter(Finding::isHere)
                .toList();
        List<Tag> fresh = here.stream()
                .filter(one -> !one.held())
                .map(Finding::tag)
                .sorted()
                .toList();
        long before = here.size() - fresh.size();
        screen.println();
        if (fresh.isEmpty()) {
            screen.prose(
                    here.isEmpty()
                            ? "nothing of it is here: no hold is recorded"
                            : "all " + Counts.of(before, "tag", "tags") + " are held already: no hold is recorded");
            return;
        }
        screen.hanging(
                "",
                "    ",
                "holding " + Counts.of(fresh.size(), "tag", "tags")
                        + (before > 0 ? ", " + before + " are held already" : "") + ": " + Tags.brief(fresh));
        recording.write(
                Draft.of(EntryKind.HELD, fresh)
                        .put("sign", sign)
                        .put("sample", sample)
                        .put(
                                "note",
                                hand.note().or(() -> Optional.of("recall of " + RecallView.asked(recall.question())))),
                new Hand(hand.on(), hand.by(), hand.note()),
                context,
                screen);
    }
}
