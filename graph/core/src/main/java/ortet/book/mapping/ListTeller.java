package ortet.book.mapping;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import ortet.book.mapping.Deed.Turn;
import ortet.entry.Cause;
import ortet.entry.EntryKind;
import ortet.entry.EntryKind.Phase;
import ortet.entry.Form;
import ortet.entry.Words;

/** Reads lists: each row tells one thing that was done or seen. */
final class ListTeller extends RowTeller {
    /** What a list says besides the fields of its entry. */
    private static final Set<String> SPECIAL = Set.of(
            Meaning.DAY,
            Meaning.BY,
            Meaning.KIND,
            Meaning.OUTCOME,
            Meaning.TAXON,
            Meaning.EPITHET,
            Meaning.CULTIVAR,
            Meaning.NOTE);

    private final Occurrences occurrences;

    ListTeller(MappedFile file, Occurrences occurrences) {
        super(file);
        this.occurrences = occurrences;
    }

    @Override
    void tell(SheetRow row, String rest) {
        Acts.Act own = acts().own();
        Turn turn = Turn.PLAIN;
        EntryKind kind;
        Texts.Builder texts = new Texts.Builder();
        if (rules().shape().sort() == Shape.Sort.OUTCOME) {
            String word = own.get(Meaning.OUTCOME);
            if (word.isEmpty()) {
                complain(row, "", Meaning.OUTCOME, "missing-value", "must not be empty: what became of it?");
                return;
            }
            Verdict verdict = Verdict.parse(word);
            if (verdict.word() == Verdict.Word.PENDING) {
                return;
            }
            turn = Verdicts.turn(verdict.word());
            kind = Verdicts.kind(verdict.word());
            verdict.why().ifPresent(why -> texts.put(Verdicts.whyField(verdict.word()), why));
            if (verdict.word() == Verdict.Word.WITHDRAWN) {
                texts.put(Meaning.CAUSE, Words.of(Cause.WITHDRAWN));
            }
        } else {
            Optional<EntryKind> known = rules().shape().kind();
            if (known.isEmpty() && own.get(Meaning.KIND).isEmpty()) {
                complain(row, "", Meaning.KIND, "missing-value", "must not be empty: what was done?");
                return;
            }
            kind = known.orElseGet(() -> Shape.kind(own.get(Meaning.KIND)));
        }
        fields(kind, turn, own, texts, row);
        String day = own.get(Meaning.DAY);
        if (!isReadable(kind, turn, own, day, row)) {
            return;
        }
        String key = key(kind, turn, day, own, texts);
        List<Deed> before = occurrences.before(rules().name(), key);
        Deed deed = new Deed.Builder(row, "", kind)
                .turn(turn)
                .day(day)
                .by(own.get(Meaning.BY))
                .texts(texts.build())
                .said(said(kind, own, row))
                .key(key, before.size() + 1)
                .rest(rest)
                .build();
        if (row.faults().isEmpty()) {
            row.tell(deed);
        }
    }

    private boolean isReadable(EntryKind kind, Turn turn, Acts.Act own, String day, SheetRow row) {
        boolean isRegister = kind.phase() == Phase.REGISTER;
        if (!isRegister && own.get(Meaning.TAGS).isEmpty()) {
            complain(row, "", Meaning.TAGS, "missing-value", "must not be empty: which plant is it?");
        }
        boolean mayBeUndated = isRegister || Shape.begins(kind) && turn == Turn.PLAIN;
        if (day.isEmpty() && !mayBeUndated) {
            complain(row, "", Meaning.DAY, "missing-value", "must not be empty: on what day, in what month or year?");
        }
        return row.faults().isEmpty();
    }

    private void fields(EntryKind kind, Turn turn, Acts.Act own, Texts.Builder texts, SheetRow row) {
        Form form = Form.of(kind);
        texts.put(Meaning.NOTE, own.get(Meaning.NOTE));
        own.texts().each((field, text) -> {
            if (SPECIAL.contains(field)) {
                return;
            }
            boolean isOfKind = form.field(field).isPresent()
                    || turn == Turn.TAKING
                            && Form.of(EntryKind.SEVERED).field(field).isPresent();
            if (isOfKind) {
                if (texts.get(field).isEmpty()) {
                    texts.put(field, text);
                }
            } else if (!own.told(field).isEmpty()) {
                texts.put(Meaning.NOTE, noted(texts.get(Meaning.NOTE), labelled("", own, field)));
            }
        });
        if (form.field(Meaning.CULTIVAR).isPresent()) {
            texts.put(Meaning.CULTIVAR, cultivar(own, row));
        }
    }

    private String said(EntryKind kind, Acts.Act own, SheetRow row) {
        return Form.of(kind).field(Meaning.CULTIVAR).isPresent() ? "" : cultivar(own, row);
    }

    private static String key(EntryKind kind, Turn turn, String day, Acts.Act own, Texts.Builder texts) {
        String what = turn == Turn.PLAIN ? kind.word() : turn.name();
        String tags = Arrays.stream(own.get(Meaning.TAGS).split(" ")).sorted().collect(Collectors.joining(" "));
        String which = tags.isEmpty() ? texts.get(Meaning.CULTIVAR) + "\n" + texts.get("place") : tags;
        return "list\n" + what + "\n" + day + "\n" + which;
    }
}
