package ortet.book.mapping;

import java.util.List;
import java.util.Set;
import ortet.entry.EntryKind;
import ortet.entry.Form;
import ortet.entry.Raised;
import ortet.entry.Words;

/** Reads from a row about a plant how it began: by which method, from which parents, how many. */
final class PlantOrigin {
    /** The fields that name a parent. */
    static final List<String> PARENTS =
            List.of(Meaning.MOTHER, Meaning.MOTHERS, "scion", "stock", "seed_parent", "pollen_parent", "source");

    /** The fields that are not simply taken over. */
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

    private final RowTeller teller;

    PlantOrigin(RowTeller teller) {
        this.teller = teller;
    }

    /** Return how a plant began; what cannot be is complained of to the row. */
    Deed tell(Method method, Acts.Act own, String tag, SheetRow row) {
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
                texts.put(Meaning.NOTE, RowTeller.noted(texts.get(Meaning.NOTE), teller.labelled("", own, field)));
            }
        });
        if (!texts.get("strength").isEmpty() && texts.get(Meaning.HORMONE).isEmpty()) {
            teller.complain(
                    row,
                    "",
                    "strength",
                    "bad-value",
                    "a strength without a hormone; expected its name in a column of its own, or a line such as"
                            + " with hormone = IBA below the column");
        }
        String cultivar = teller.cultivar(own, row);
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
                    teller.complain(row, "", Meaning.MOTHERS, "bad-value", "a " + method.word() + " has one mother");
                } else if (one.isEmpty() && teller.rules().settings().acquiresMotherless()) {
                    kind = EntryKind.ACQUIRED;
                    texts.put("raised", Words.of(raised(method)));
                    texts.put(Meaning.NOTE, RowTeller.noted(texts.get(Meaning.NOTE), "the mother was not recorded"));
                } else if (one.isEmpty()) {
                    teller.complain(
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
                    texts.put(
                            Meaning.NOTE,
                            RowTeller.noted(texts.get(Meaning.NOTE), teller.labelled("", own, Meaning.OTHER_PARENT)));
                }
                refuseParents(method, own, row, Set.of(Meaning.MOTHER, "seed_parent", "pollen_parent"));
            }
            case DRAWN -> {
                String source = own.get("source");
                texts.put("source", source.isEmpty() ? mother : source);
                if (source.isEmpty() && mother.isEmpty()) {
                    teller.complain(
                            row, "", "source", "missing-value", "must not be empty: which batch was it drawn from?");
                }
                refuseParents(method, own, row, Set.of(Meaning.MOTHER, "source"));
            }
            case ACQUIRED -> refuseParents(method, own, row, Set.of());
        }
        if (method != Method.GRAFT) {
            for (String field : List.of("rootstock", "stock_cultivar", Meaning.OTHER_PARENT)) {
                boolean isUsed = method == Method.SEED && field.equals(Meaning.OTHER_PARENT);
                if (!own.told(field).isEmpty() && !isUsed) {
                    texts.put(Meaning.NOTE, RowTeller.noted(texts.get(Meaning.NOTE), teller.labelled("", own, field)));
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
                teller.complain(
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
                    teller.complain(
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
}
