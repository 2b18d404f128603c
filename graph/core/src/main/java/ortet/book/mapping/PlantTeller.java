package ortet.book.mapping;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import ortet.book.mapping.Deed.Turn;
import ortet.book.mapping.Verdict.Word;
import ortet.entry.Cause;
import ortet.entry.EntryKind;
import ortet.entry.Form;
import ortet.entry.Roots;
import ortet.entry.Words;
import ortet.value.When;

/**
 * Reads sheets with one row for each plant, layer or batch: where it comes from, what was done to it, and what became of
 * it.
 */
final class PlantTeller extends RowTeller {
    private final PlantOrigin origins = new PlantOrigin(this);

    PlantTeller(MappedFile file) {
        super(file);
    }

    @Override
    void tell(SheetRow row, String rest) {
        Acts.Act own = acts().own();
        String tag = own.get(Meaning.TAGS);
        if (tag.isEmpty()) {
            complain(row, "", Meaning.TAGS, "missing-value", "must not be empty: which plant is it?");
            return;
        }
        Optional<Method> method = method(own, row);
        if (method.isEmpty()) {
            return;
        }
        Deed origin = origins.tell(method.get(), own, tag, row);
        if (!row.faults().isEmpty()) {
            return;
        }
        row.tell(origin);
        Method began = Method.of(origin.kind()).orElse(Method.ACQUIRED);
        Map<String, Deed.Builder> acts = new LinkedHashMap<>();
        acts().all().forEach((name, act) -> {
            if (act.kind().isPresent() && act.isTold() && !isNone(act)) {
                act(name, act, began, acts, row);
            }
        });
        outcome(began, acts, row);
        if (row.faults().isEmpty()) {
            acts.values().forEach(builder -> {
                Deed deed = builder.build();
                String key = deed.key().isEmpty() ? deed.act() : deed.key();
                row.tell(deed.but()
                        .key("plant\n" + tag + "\n" + key, 1)
                        .texts(deed.texts().with(Meaning.TAGS, tag))
                        .build());
            });
        }
    }

    /** Tell whether a count of nothing says that the act was none. */
    private static boolean isNone(Acts.Act act) {
        return act.get(Meaning.COUNT).equals("0")
                && act.kind().filter(kind -> Vocabulary.OUTCOMES.contains(kind)).isPresent();
    }

    private Optional<Method> method(Acts.Act own, SheetRow row) {
        String word = own.get(Meaning.METHOD);
        if (!word.isEmpty()) {
            return Optional.of(Method.parse(word));
        }
        Optional<String> parent = PlantOrigin.PARENTS.stream()
                .filter(field -> !own.told(field).isEmpty())
                .findFirst();
        if (parent.isEmpty()) {
            return Optional.of(Method.ACQUIRED);
        }
        complain(
                row,
                "",
                Meaning.METHOD,
                "missing-value",
                "must not be empty: how does it come from " + own.told(parent.get())
                        + "? expected a method such as layer, cuttings or graft");
        return Optional.empty();
    }

    // ---- what was done to it ----

    private void act(String name, Acts.Act act, Method method, Map<String, Deed.Builder> acts, SheetRow row) {
        EntryKind kind = act.kind().orElseThrow();
        String as = name;
        boolean isLayer = method == Method.LAYER;
        boolean tookAnotherWay = isLayer ? kind == EntryKind.TAKEN : kind == EntryKind.SEVERED && pends(method);
        if (tookAnotherWay && !isTold(isLayer ? "severed" : "taken")) {
            kind = isLayer ? EntryKind.SEVERED : EntryKind.TAKEN;
            as = isLayer ? "severed" : "taken";
        }
        boolean isTaking = kind == EntryKind.SEVERED || kind == EntryKind.TAKEN;
        String day = day(act, kind);
        if (day.isEmpty() && !isTaking) {
            complain(
                    row,
                    name,
                    Meaning.DAY,
                    "missing-value",
                    "must not be empty, for the row says something of what was " + name
                            + "; expected a day, month or year, or a line such as otherwise " + name
                            + " day = same year in the mapping");
            return;
        }
        acts.put(as, builder(as, kind, act, day, row).turn(day.isEmpty() ? Turn.TAKING : Turn.PLAIN));
    }

    private boolean isTold(String name) {
        return acts().act(name).filter(Acts.Act::isTold).isPresent();
    }

    private static boolean pends(Method method) {
        return method == Method.CUTTINGS || method == Method.GRAFT || method == Method.SEED;
    }

    /** Return the day of an act: its own, the outcome's where the act may be that, else what the mapping gives. */
    private String day(Acts.Act act, EntryKind kind) {
        String own = act.told(Meaning.DAY);
        if (!own.isEmpty()) {
            return own;
        }
        Optional<Acts.Act> outcome = acts().act(Meaning.OUTCOME).filter(told -> mayBe(told, kind));
        String told = outcome.map(found -> found.told(Meaning.DAY)).orElse("");
        if (!told.isEmpty()) {
            return told;
        }
        String given = act.get(Meaning.DAY);
        return given.isEmpty() ? outcome.map(found -> found.get(Meaning.DAY)).orElse("") : given;
    }

    /** Tell whether the day of the outcome may be that of an act of a kind. */
    private static boolean mayBe(Acts.Act outcome, EntryKind kind) {
        if (!Vocabulary.OUTCOMES.contains(kind)) {
            return false;
        }
        String word = outcome.get(Meaning.OUTCOME);
        if (word.isEmpty()) {
            return true;
        }
        return switch (Verdict.parse(word).word()) {
            case TAKEN, FAILED, WITHDRAWN, PENDING -> true;
            case DEAD, LOST -> kind == EntryKind.LOST || kind == EntryKind.FAILED;
            case GROWING -> kind == EntryKind.SEEN;
            case SOLD -> kind == EntryKind.SOLD;
            case CULLED -> kind == EntryKind.CULLED;
        };
    }

    private Deed.Builder builder(String name, EntryKind kind, Acts.Act act, String day, SheetRow row) {
        Texts.Builder texts = new Texts.Builder();
        Form form = Form.of(kind);
        texts.put(Meaning.NOTE, act.get(Meaning.NOTE));
        act.texts().each((field, text) -> {
            boolean isNothing = field.equals(Meaning.COUNT) && text.equals("0") && kind != EntryKind.COUNTED;
            boolean isApart = field.equals(Meaning.DAY) || field.equals(Meaning.BY) || field.equals(Meaning.NOTE);
            if (isNothing || isApart) {
                return;
            }
            if (form.field(field).isPresent()) {
                texts.put(field, text);
            } else if (!act.told(field).isEmpty()) {
                String from = act.kind().orElse(kind).word().replace('-', ' ');
                texts.put(Meaning.NOTE, noted(texts.get(Meaning.NOTE), labelled(from, act, field)));
            }
        });
        return new Deed.Builder(row, name, kind)
                .day(day)
                .by(act.get(Meaning.BY))
                .texts(texts.build());
    }

    // ---- what became of it ----

    private void outcome(Method method, Map<String, Deed.Builder> acts, SheetRow row) {
        Optional<Acts.Act> told = acts().act(Meaning.OUTCOME);
        String text = told.map(act -> act.get(Meaning.OUTCOME)).orElse("");
        if (text.isEmpty()) {
            return;
        }
        Acts.Act outcome = told.orElseThrow();
        Verdict verdict = Verdict.parse(text);
        switch (verdict.word()) {
            case PENDING -> {}
            case TAKEN -> taken(method, outcome, acts, row);
            case GROWING -> put(outcome, "seen", EntryKind.SEEN, Turn.GROWING, verdict, acts, row);
            case FAILED, WITHDRAWN -> failed(method, outcome, verdict, acts, row);
            case DEAD -> {
                boolean isLost = acts.containsKey("lost") || acts.containsKey("severed") || acts.containsKey("taken");
                put(
                        outcome,
                        isLost ? "lost" : "failed",
                        isLost ? EntryKind.LOST : EntryKind.FAILED,
                        isLost || acts.containsKey("failed") ? Turn.PLAIN : Turn.DEAD,
                        verdict,
                        acts,
                        row);
            }
            case LOST -> put(outcome, "lost", EntryKind.LOST, Turn.PLAIN, verdict, acts, row);
            case SOLD -> put(outcome, "sold", EntryKind.SOLD, Turn.PLAIN, verdict, acts, row);
            case CULLED -> put(outcome, "culled", EntryKind.CULLED, Turn.PLAIN, verdict, acts, row);
        }
    }

    private void taken(Method method, Acts.Act outcome, Map<String, Deed.Builder> acts, SheetRow row) {
        boolean isLayer = method == Method.LAYER;
        String name = isLayer ? "severed" : "taken";
        if (acts.containsKey(name)
                || method == Method.ACQUIRED
                || method == Method.DIVISION
                || method == Method.SPORT) {
            return;
        }
        put(
                outcome,
                name,
                isLayer ? EntryKind.SEVERED : EntryKind.TAKEN,
                Turn.TAKING,
                new Verdict(Word.TAKEN, Optional.empty()),
                acts,
                row);
    }

    private void failed(
            Method method, Acts.Act outcome, Verdict verdict, Map<String, Deed.Builder> acts, SheetRow row) {
        Deed.Builder severed = acts.get("severed");
        if (method != Method.LAYER || severed == null || verdict.word() == Word.WITHDRAWN) {
            Verdict why = verdict.word() == Word.WITHDRAWN
                    ? new Verdict(Word.FAILED, Optional.of(Words.of(Cause.WITHDRAWN)))
                    : verdict;
            put(outcome, "failed", EntryKind.FAILED, Turn.PLAIN, why, acts, row);
            return;
        }
        Deed cut = severed.build();
        String day = outcome.get(Meaning.DAY);
        boolean isLater = !day.isEmpty()
                && cut.day()
                        .flatMap(
                                cutOn -> parsed(day).filter(then -> then.first().isAfter(cutOn.last())))
                        .isPresent();
        if (isLater) {
            put(outcome, "lost", EntryKind.LOST, Turn.PLAIN, verdict, acts, row);
        } else if (!cut.texts().has("roots")) {
            // Severed, and it had failed: there were no roots.
            severed.texts(cut.texts().with("roots", Words.of(Roots.NONE)));
        } else if (!cut.texts().get("roots").equals(Words.of(Roots.NONE))) {
            complain(
                    row,
                    Meaning.OUTCOME,
                    Meaning.OUTCOME,
                    "bad-value",
                    "failed, but severed with roots that day; expected lost, or no roots");
        }
    }

    private static Optional<When> parsed(String day) {
        boolean isRelative = day.equals(CellReader.SAME_YEAR) || day.equals(CellReader.NEXT_YEAR);
        return isRelative ? Optional.empty() : Optional.of(When.parse(day));
    }

    /** Put an outcome among the acts, or say more of the act that is there. */
    private void put(
            Acts.Act outcome,
            String name,
            EntryKind kind,
            Turn turn,
            Verdict verdict,
            Map<String, Deed.Builder> acts,
            SheetRow row) {
        Deed.Builder builder = acts.get(name);
        if (builder == null) {
            Optional<Acts.Act> given = acts().act(name);
            String day = outcome.told(Meaning.DAY);
            if (day.isEmpty()) {
                day = given.map(act -> act.get(Meaning.DAY)).orElse("");
            }
            if (day.isEmpty()) {
                day = outcome.get(Meaning.DAY);
            }
            builder = given.isPresent()
                    ? builder(name, kind, given.get(), day, row)
                    : new Deed.Builder(row, name, kind).day(day).by(outcome.get(Meaning.BY));
            if (kind == EntryKind.FAILED || kind == EntryKind.LOST) {
                builder.key("ended", 1); // which of the two may change when more becomes known
            }
        }
        Deed so = builder.build();
        if (so.by().isEmpty()) {
            builder.by(outcome.get(Meaning.BY));
        }
        Texts texts = so.texts();
        Form form = Form.of(kind);
        String count = outcome.get(Meaning.COUNT).equals("0") ? "" : outcome.get(Meaning.COUNT);
        texts = unlessThere(texts, form, Meaning.COUNT, count);
        texts = unlessThere(texts, form, Meaning.NOTE, outcome.get(Meaning.NOTE));
        texts = unlessThere(texts, form, Meaning.CAUSE, verdict.why().orElse(outcome.get(Meaning.CAUSE)));
        if (kind == EntryKind.CULLED) {
            texts = unlessThere(texts, form, "cull", verdict.why().orElse(""));
        }
        boolean mayBeUndated = turn == Turn.TAKING || turn == Turn.GROWING;
        if (so.day().isEmpty() && so.relativeDay().isEmpty() && !mayBeUndated) {
            complain(
                    row,
                    Meaning.OUTCOME,
                    Meaning.DAY,
                    "missing-value",
                    "must not be empty: when was it " + verdict.word().name().toLowerCase(Locale.ROOT)
                            + "? expected a day, month or year, or a line such as otherwise outcome day = same year in the"
                            + " mapping");
            return;
        }
        acts.put(name, builder.turn(turn).texts(texts));
    }

    private static Texts unlessThere(Texts texts, Form form, String field, String text) {
        return text.isEmpty() || texts.has(field) || form.field(field).isEmpty() ? texts : texts.with(field, text);
    }
}
