package ortet.commands;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Arguments;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import ortet.entry.EntryId;
import ortet.entry.EntryKind;
import ortet.entry.Form;
import ortet.entry.Recorded;
import ortet.line.UsageException;
import ortet.line.Word;
import ortet.plant.Tag;
import ortet.screen.Screen;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;
import ortet.value.When;

/** Putting right what was written, and writing any kind of entry. */
public final class AmendCommands {
    private static final String GROUP = "The book";

    private final Recording recording;
    private final Shelf shelf;

    AmendCommands(Recording recording, Shelf shelf) {
        this.recording = recording;
        this.shelf = shelf;
    }

    @Command(name = "correct", group = GROUP, description = "put one field of an entry right", help = """
            The number of an entry is said when it is written and stands in "ortet plant". The old words stay readable.
            With --tags only those of its units are meant. Fields are those of the day book, and day, by and tags.
            ortet correct 412 --field stem_mm --value 14 --tags J-205
            ortet correct 412 --field day --value 2026-05-02 --reason "wrong day on the sheet"
            ortet correct 412 --field tags --tags J-205 --value J-250
            """)
    void correct(
            @Argument(index = 0, description = "the number of the entry") @Word("ENTRY") String entry,
            @Option(longName = "field", required = true, description = "the field that is wrong") String field,
            @Option(longName = "value", description = "the true value; without it the field is emptied")
                    Optional<String> value,
            @Option(longName = "tags", description = "the units meant; all of them unless given") List<Tag> tags,
            @Option(longName = "reason", description = "why") Optional<String> reason,
            @Option(longName = "on", description = "the day of the correction; today unless given") Optional<When> on,
            @Option(longName = "by", description = "who corrects") @Word("PERSON") Optional<String> by,
            CommandContext context,
            Screen screen) {
        String column = field.strip().toLowerCase(Locale.ROOT).replace('-', '_');
        Optional<String> text = value;
        if (value.isPresent() && (column.equals("by") || isPerson(column))) {
            text = Optional.of(Recording.person(shelf.open(context), value.get(), column)
                    .number()
                    .toString());
        }
        recording.write(
                Draft.of(EntryKind.CORRECTED, tags)
                        .put("target", target(entry, context))
                        .put("field", column)
                        .put("value", text)
                        .put("reason", reason),
                on,
                by,
                context,
                screen);
    }

    private static boolean isPerson(String column) {
        return Optional.ofNullable(Form.columns().get(column))
                .filter(field -> field.nature() == Form.Nature.PERSON)
                .isPresent();
    }

    @Command(name = "cross-out", group = GROUP, description = "take an entry back; its words stay readable", help = """
            Refused while something else rests on it; what does is listed.
            ortet cross-out 412 --reason "wrong tree"
            """)
    void crossOut(
            @Argument(index = 0, description = "the number of the entry") @Word("ENTRY") String entry,
            @Option(longName = "reason", required = true, description = "why") String reason,
            @Option(longName = "on", description = "the day; today unless given") Optional<When> on,
            @Option(longName = "by", description = "who") @Word("PERSON") Optional<String> by,
            CommandContext context,
            Screen screen) {
        recording.write(
                Draft.of(EntryKind.CROSSED_OUT)
                        .put("target", target(entry, context))
                        .put("reason", reason),
                on,
                by,
                context,
                screen);
    }

    private EntryId target(String entry, CommandContext context) {
        String bare = entry.startsWith("#") ? entry.substring(1) : entry;
        if (!bare.matches("\\d{1,15}")) {
            return EntryId.parse(entry);
        }
        return shelf.open(context)
                .read(view -> view.entry(Long.parseLong(bare))
                        .map(Recorded::proposed)
                        .orElseThrow(() -> Refused.because(
                                "unknown-entry",
                                "no entry " + bare + "; the last one is "
                                        + view.head().order()))
                        .id());
    }

    @Command(name = "enter", group = GROUP, description = "write an entry of any kind", help = """
            KIND and the fields are those of the day book (docs/day-book.md). Persons may be named.
            ortet enter graft-worked G-1..G-10 scion=K-12 stock=R-9 graft=side-veneer
            ortet enter seed-sown S-4 grams=12 "seed_parent=K-12" --on 2026-03
            ortet enter held J-201..J-205 "sign=leaf spots, sample sent" sample=26-17
            """)
    void enter(
            @Arguments @Word(value = "KIND TAG… FIELD=VALUE", description = "the kind, the tags, the fields")
                    List<String> words,
            @Option(longName = "on", description = "the day; today unless given") Optional<When> on,
            @Option(longName = "by", description = "who did it") @Word("PERSON") Optional<String> by,
            CommandContext context,
            Screen screen) {
        EntryKind kind = EntryKind.of(words.get(0))
                .orElseThrow(() -> new UsageException("no kind of entry \"" + words.get(0) + "\""
                        + Nearest.of(words.get(0), EntryKind.words())
                                .map(near -> "; nearest: " + near)
                                .orElse("; expected one of " + String.join(", ", EntryKind.words()))));
        StringBuilder tags = new StringBuilder();
        Draft draft = Draft.of(kind);
        for (String word : words.subList(1, words.size())) {
            int equals = word.indexOf('=');
            if (equals < 0) {
                tags.append(tags.length() == 0 ? "" : " ").append(word);
                continue;
            }
            String column =
                    word.substring(0, equals).strip().toLowerCase(Locale.ROOT).replace('-', '_');
            if (Form.of(kind).field(column).isEmpty()) {
                List<String> known =
                        Form.of(kind).fields().stream().map(Form.Field::name).toList();
                throw new Refused(Fault.of(
                                "unused-column",
                                kind.word() + " has no field \"" + column + "\"; it has " + String.join(", ", known))
                        .nearest(Nearest.of(column, known)));
            }
            String value = word.substring(equals + 1);
            draft.put(
                    column,
                    isPerson(column)
                            ? Recording.person(shelf.open(context), value, column)
                                    .number()
                                    .toString()
                            : value);
        }
        if (tags.length() > 0) {
            draft.put("tags", tags.toString());
        }
        recording.write(draft, on, by, context, screen);
    }
}
