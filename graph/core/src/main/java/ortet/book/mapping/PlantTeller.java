package ortet.book.mapping;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import ortet.book.mapping.Deed.Turn;
import ortet.book.mapping.Verdict.Word;
import ortet.entry.Cause;
import ortet.entry.EntryKind;
import ortet.entry.Form;
import ortet.entry.Raised;
import ortet.entry.Roots;
import ortet.entry.Words;
import ortet.value.When;

/**
 * Reads sheets with one row for each plant, layer or batch: where it comes from, what was done to it, and what became of
 * it.
 */
final class PlantTeller extends RowTeller {
    private static final Set<String> SPECIAL = Set.of(
            Meaning.TAGS,
            Meaning.METHOD,
            Meaning.MOTHER,
            Meaning.MOTHERS,
            Meaning.DAY,
            Meaning.BY,
            Meaning.NOTE,
            Meaning.CULTIVAR,
            Meaning.TAXON,
            Meaning.EPITHET,
            "scion",
            "stock",
            "rootstock",
            Meaning.OTHER_PARENT,
            "stock_cultivar",
            "seed_parent",
            "pollen_parent",
            "source",
            Meaning.COUNT);
    private static final List<String> PARENTS =
            List.of(Meaning.MOTHER, Meaning.MOTHERS, "scion", "stock", "seed_parent", "pollen_parent", "source");

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
        Deed origin = origin(method.get(), own, tag, row);
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
        Optional<String> parent =
                PARENTS.stream().filter(field -> !own.told(field).isEmpty()).findFirst();
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

    // ---- where it comes from ----

    private Deed origin(Method method, Acts.Act own, String tag, SheetRow row) {
        Texts.Builder texts = new Texts.Builder();
        texts.put(Meaning.TAGS, tag);
        texts.put(Meaning.NOTE, own.get(Meaning.NOTE));
        EntryKind kind = parents(method, own, texts, row);
        count(kind, own, texts, row);
        Form form = Form.of(kind);
        own.texts().each((field, text) -> {
            if (SPECIAL.contains(field)) {
                return;
            }
            if (form.field(field).isPresent()) {
                texts.put(field, text);
            } else if (!own.told(field).isEmpty()) {
                texts.put(Meaning.NOTE, noted(texts.get(Meaning.NOTE), labelled("", own, field)));
            }
        });
        if (!texts.get("strength").isEmpty() && texts.get(Meaning.HORMONE).isEmpty()) {
            complain(
                    row,
                    "",
                    "strength",
                    "bad-value",
                    "a strength without a hormone; expected its name in a column of its own, or a line such as"
                            + " with hormone = IBA below the column");
        }
        String cultivar = cultivar(own, row);
        boolean hasPlace = form.field(Meaning.CULTIVAR).isPresent();
        if (hasPlace) {
            texts.put(Meaning.CULTIVAR, cultivar);
        }
        return new Deed.Builder(row, "", kind)
                .day(own.get(Meaning.DAY))
                .by(own.get(Meaning.BY))
                .texts(texts.build())
                .said(hasPlace ? "" : cultivar)
                .key("plant\n" + tag + "\n", 1)
                .build();
    }

    /** Put the parents into the fields that the method has for them, and return the kind of the beginning. */
    private EntryKind parents(Method method, Acts.Act own, Texts.Builder texts, SheetRow row) {
        String mother = own.get(Meaning.MOTHER);
        String mothers = own.get(Meaning.MOTHERS);
        EntryKind kind = method.kind();
        switch (method) {
            case LAYER, DIVISION, SPORT -> {
                String one = mother.isEmpty() ? mothers : mother;
                if (one.indexOf(' ') >= 0) {
                    complain(row, "", Meaning.MOTHERS, "bad-value", "a " + method.word() + " has one mother");
                } else if (one.isEmpty() && rules().settings().acquiresMotherless()) {
                    kind = EntryKind.ACQUIRED;
                    texts.put("raised", Words.of(raised(method)));
                    texts.put(Meaning.NOTE, noted(texts.get(Meaning.NOTE), "the mother was not recorded"));
                } else if (one.isEmpty()) {
                    complain(
                            row,
                            "",
                            Meaning.MOTHER,
                            "missing-value",
                            "must not be empty: a " + method.word()
                                    + " has a mother; where nobody knows her, a line without a mother = acquire in the"
                                    + " mapping takes it as earliest known, origin unknown");
                }
                if (kind != EntryKind.ACQUIRED) {
                    texts.put(Meaning.MOTHER, one);
                }
                refuseParents(method, own, row, Set.of(Meaning.MOTHER, Meaning.MOTHERS));
            }
            case CUTTINGS -> {
                texts.put(Meaning.MOTHERS, mothers.isEmpty() ? mother : mothers);
                refuseParents(method, own, row, Set.of(Meaning.MOTHER, Meaning.MOTHERS));
            }
            case GRAFT -> {
                String scion = own.get("scion");
                texts.put("scion", scion.isEmpty() ? mother : scion);
                stock(own, texts);
                refuseParents(method, own, row, Set.of(Meaning.MOTHER, "scion", "stock"));
            }
            case SEED -> {
                String seedParent = own.get("seed_parent");
                texts.put("seed_parent", seedParent.isEmpty() ? mother : seedParent);
                String pollenParent = own.get("pollen_parent");
                String other = own.get(Meaning.OTHER_PARENT);
                boolean isTag = pollenParent.isEmpty() && !CellReader.isName(other);
                texts.put("pollen_parent", isTag ? other : pollenParent);
                if (!isTag && !other.isEmpty()) {
                    texts.put(Meaning.NOTE, noted(texts.get(Meaning.NOTE), labelled("", own, Meaning.OTHER_PARENT)));
                }
                refuseParents(method, own, row, Set.of(Meaning.MOTHER, "seed_parent", "pollen_parent"));
            }
            case DRAWN -> {
                String source = own.get("source");
                texts.put("source", source.isEmpty() ? mother : source);
                if (source.isEmpty() && mother.isEmpty()) {
                    complain(row, "", "source", "missing-value", "must not be empty: which batch was it drawn from?");
                }
                refuseParents(method, own, row, Set.of(Meaning.MOTHER, "source"));
            }
            case ACQUIRED -> refuseParents(method, own, row, Set.of());
        }
        if (method != Method.GRAFT) {
            for (String field : List.of("rootstock", "stock_cultivar", Meaning.OTHER_PARENT)) {
                boolean isUsed = method == Method.SEED && field.equals(Meaning.OTHER_PARENT);
                if (!own.told(field).isEmpty() && !isUsed) {
                    texts.put(Meaning.NOTE, noted(texts.get(Meaning.NOTE), labelled("", own, field)));
                }
            }
        }
        return kind;
    }

    private static void stock(Acts.Act own, Texts.Builder texts) {
        String rootstock = own.get("rootstock").isEmpty() ? own.get(Meaning.OTHER_PARENT) : own.get("rootstock");
        boolean isName = CellReader.isName(rootstock);
        texts.put("stock", own.get("stock").isEmpty() && !isName ? rootstock : own.get("stock"));
        if (texts.get("stock").isEmpty()) {
            texts.put("stock_cultivar", isName ? rootstock : own.get("stock_cultivar"));
        }
    }

    private void refuseParents(Method method, Acts.Act own, SheetRow row, Set<String> allowed) {
        for (String field : PARENTS) {
            if (!allowed.contains(field) && !own.told(field).isEmpty()) {
                complain(
                        row,
                        "",
                        field,
                        "not-of-method",
                        method == Method.ACQUIRED
                                ? "what was acquired comes from nothing in the book, so " + own.told(field)
                                        + " cannot be its " + field.replace('_', ' ')
                                        + "; expected a method such as layer, or nothing here"
                                : "must be empty, for what was raised as " + method.word() + " has no "
                                        + field.replace('_', ' '));
            }
        }
    }

    private static Raised raised(Method method) {
        return switch (method) {
            case LAYER -> Raised.LAYER;
            case DIVISION -> Raised.DIVISION;
            default -> Raised.UNKNOWN;
        };
    }

    private void count(EntryKind kind, Acts.Act own, Texts.Builder texts, SheetRow row) {
        String count = own.get(Meaning.COUNT).equals("0") ? "" : own.get(Meaning.COUNT);
        switch (kind) {
            case LAYER_SET, DIVIDED, SPORT_FOUND -> {
                if (!count.isEmpty() && !count.equals("1")) {
                    complain(
                            row,
                            "",
                            Meaning.COUNT,
                            "single-plant",
                            "expected a row and a tag for each, found a count of " + count);
                }
            }
            case CUTTINGS_STRUCK -> texts.put(Meaning.COUNT, count.isEmpty() ? "1" : count);
            case SEED_SOWN ->
                texts.put(Meaning.COUNT, count.isEmpty() && own.get("grams").isEmpty() ? "1" : count);
            default -> texts.put(Meaning.COUNT, count.equals("1") ? "" : count);
        }
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
