package ortet.book.mapping;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ortet.book.mapping.Meaning.Sort;
import ortet.entry.Band;
import ortet.entry.Condition;
import ortet.entry.EntryKind;
import ortet.entry.EntryKind.Phase;
import ortet.entry.Form;
import ortet.entry.Words;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;

/** What the columns of a sheet of some shape may say, by the names that a mapping calls it. */
final class Vocabulary {
    /** The acts that a row about a plant may tell of. */
    static final Set<EntryKind> ACTS = EnumSet.of(
            EntryKind.CHECKED,
            EntryKind.REWORKED,
            EntryKind.TAKEN,
            EntryKind.SEVERED,
            EntryKind.FAILED,
            EntryKind.POTTED,
            EntryKind.PLANTED_OUT,
            EntryKind.LIFTED,
            EntryKind.MOVED,
            EntryKind.MEASURED,
            EntryKind.SEEN,
            EntryKind.KEPT_AS_STOCK,
            EntryKind.LEFT_LONG,
            EntryKind.CUT_BACK,
            EntryKind.HELD,
            EntryKind.CLEARED,
            EntryKind.GRADED,
            EntryKind.COUNTED,
            EntryKind.RESERVED,
            EntryKind.RELEASED,
            EntryKind.NOTED,
            EntryKind.SOLD,
            EntryKind.RETURNED,
            EntryKind.CULLED,
            EntryKind.LOST,
            EntryKind.RETAGGED,
            EntryKind.REDETERMINED);

    /** The kinds that an outcome may become. */
    static final Set<EntryKind> OUTCOMES = EnumSet.of(
            EntryKind.TAKEN,
            EntryKind.SEVERED,
            EntryKind.FAILED,
            EntryKind.SEEN,
            EntryKind.LOST,
            EntryKind.SOLD,
            EntryKind.CULLED);

    private static final Pattern ACT = Pattern.compile("(.+?)(?: ([2-9]|1\\d))? ([a-z].*)");
    private static final Pattern BAND = Pattern.compile("positions ([0-9.]+-[0-9.]+)");
    private static final Set<String> COUNTS = Set.of("count", "branch_order", "stock_age_years");
    private static final Set<String> UNITS = Set.of("mm", "c", "m2", "years");
    private static final List<String> BEGUN_DAY = List.of(
            "begun day",
            "day",
            "begun",
            "set day",
            "day set",
            "struck day",
            "worked day",
            "sown day",
            "divided day",
            "drawn day",
            "acquired day",
            "bought day");
    private static final Map<Shape, Vocabulary> KNOWN = new HashMap<>();

    private final Shape shape;
    private final Map<String, Meaning> meanings = new LinkedHashMap<>();
    private final Set<String> names = new LinkedHashSet<>();

    private Vocabulary(Shape shape) {
        this.shape = shape;
        switch (shape.sort()) {
            case PLANT -> plant();
            case OUTCOME -> outcome();
            case ENTRY -> entry();
        }
    }

    /** Return the vocabulary of a shape. */
    static synchronized Vocabulary of(Shape shape) {
        return KNOWN.computeIfAbsent(shape, Vocabulary::new);
    }

    /** Tell whether a column says the kind of each row. */
    boolean hasKinds() {
        return shape.sort() == Shape.Sort.ENTRY && shape.kind().isEmpty();
    }

    /** Return the names, in order, each once; those of further acts of a kind and of parts are not among them. */
    List<String> names() {
        return List.copyOf(names);
    }

    /**
     * Return what a name means.
     *
     * @throws Refused when it means nothing in a row of this shape
     */
    Meaning meaning(String name) {
        String wanted = name.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", " ");
        Meaning known = meanings.get(wanted);
        if (known != null) {
            return known;
        }
        Optional<Meaning> part = part(wanted, name.strip().toLowerCase(Locale.ROOT));
        if (part.isPresent()) {
            return part.get();
        }
        Matcher matcher = ACT.matcher(wanted);
        if (shape.sort() == Shape.Sort.PLANT && matcher.matches() && matcher.group(2) != null) {
            Meaning first = meanings.get(matcher.group(1) + " " + matcher.group(3));
            if (first != null && !first.isOwn()) {
                String act = first.act() + " " + matcher.group(2);
                return new Meaning(act, first.kind(), first.field(), first.sort(), first.part(), wanted);
            }
        }
        throw new Refused(Fault.of(
                        "unknown-field",
                        "a sheet with row = " + shape.word() + " has no \"" + name.strip() + "\"; it has "
                                + String.join(", ", shown()))
                .nearest(Nearest.of(wanted, meanings.keySet())));
    }

    private List<String> shown() {
        if (shape.sort() != Shape.Sort.PLANT) {
            return names();
        }
        List<String> own = new ArrayList<>(names.stream()
                .filter(name ->
                        meanings.get(name).isOwn() || meanings.get(name).act().equals(Meaning.OUTCOME))
                .toList());
        own.add("and those of what was done to it, such as potted day, potted container, potted 2 day");
        return own;
    }

    private Optional<Meaning> part(String wanted, String asWritten) {
        Matcher band = BAND.matcher(asWritten.replace("checked ", "").replace("measured ", ""));
        Meaning positions = meanings.getOrDefault("measured positions", meanings.get("positions"));
        if (positions != null && band.matches()) {
            Band.parse(band.group(1) + ":0");
            return Optional.of(of(positions, Sort.POSITION, band.group(1), asWritten));
        }
        Meaning findings = meanings.getOrDefault("checked findings", meanings.get("findings"));
        String word = wanted.startsWith("checked ") ? wanted.substring("checked ".length()) : wanted;
        if (findings != null && word.startsWith("findings ")) {
            String condition = Words.of(Words.parse(Condition.class, word.substring("findings ".length())));
            return Optional.of(of(findings, Sort.FINDING, condition, wanted));
        }
        return Optional.empty();
    }

    private static Meaning of(Meaning whole, Sort sort, String part, String name) {
        return new Meaning(whole.act(), whole.kind(), whole.field(), sort, part, name);
    }

    private void plant() {
        own(Meaning.TAGS, Sort.TAG, "tag");
        own(Meaning.METHOD, Sort.METHOD, "method");
        own(Meaning.MOTHER, Sort.TAG, "mother");
        own(Meaning.MOTHERS, Sort.MOTHERS, "mothers");
        own("scion", Sort.TAG, "scion");
        own("stock", Sort.TAG, "stock");
        own("rootstock", Sort.ROOTSTOCK, "rootstock");
        own(Meaning.OTHER_PARENT, Sort.ROOTSTOCK, "other parent", "second parent");
        own(Meaning.DAY, Sort.DAY, BEGUN_DAY.toArray(String[]::new));
        own(Meaning.BY, Sort.PERSON, "by");
        act(Meaning.OUTCOME, Optional.empty(), Meaning.OUTCOME, Sort.OUTCOME, Meaning.OUTCOME);
        act(Meaning.OUTCOME, Optional.empty(), Meaning.DAY, Sort.DAY, "outcome day", "day of outcome");
        act(Meaning.OUTCOME, Optional.empty(), Meaning.BY, Sort.PERSON, "outcome by");
        act(Meaning.OUTCOME, Optional.empty(), Meaning.COUNT, Sort.COUNT, "outcome count");
        act(Meaning.OUTCOME, Optional.empty(), Meaning.CAUSE, Sort.CHOICE, "outcome cause", "cause");
        act(Meaning.OUTCOME, Optional.empty(), Meaning.NOTE, Sort.TEXT, "outcome note");
        cultivar();
        for (Method method : Method.values()) {
            fields(method.kind(), "", Optional.empty());
        }
        for (EntryKind kind : ACTS) {
            String word = kind.word().replace('-', ' ');
            act(word, Optional.of(kind), Meaning.DAY, Sort.DAY, word + " day", "day " + word);
            act(word, Optional.of(kind), Meaning.BY, Sort.PERSON, word + " by");
            fields(kind, word, Optional.of(kind));
        }
    }

    private void outcome() {
        own(Meaning.TAGS, Sort.TAG, "tag");
        own(Meaning.TAGS, Sort.TAGS, "tags");
        own(Meaning.DAY, Sort.DAY, "day");
        own(Meaning.BY, Sort.PERSON, "by");
        own(Meaning.OUTCOME, Sort.OUTCOME, Meaning.OUTCOME);
        for (EntryKind kind : OUTCOMES) {
            fields(kind, "", Optional.empty());
        }
    }

    private void entry() {
        List<EntryKind> kinds = shape.kind()
                .map(List::of)
                .orElse(Arrays.stream(EntryKind.values())
                        .filter(kind -> kind.phase() != Phase.AMENDMENT)
                        .toList());
        boolean hasTags = kinds.stream()
                .anyMatch(kind -> Form.of(kind).field(Meaning.TAGS).isPresent());
        if (hasTags) {
            own(Meaning.TAGS, Sort.TAG, "tag");
            own(Meaning.TAGS, Sort.TAGS, "tags");
        }
        own(Meaning.DAY, Sort.DAY, "day");
        own(Meaning.BY, Sort.PERSON, "by");
        if (shape.kind().isEmpty()) {
            own(Meaning.KIND, Sort.KIND, "kind");
        }
        if (kinds.stream()
                .anyMatch(kind -> Form.of(kind).field(Meaning.CULTIVAR).isPresent())) {
            cultivar();
        }
        kinds.forEach(kind -> fields(kind, "", Optional.empty()));
    }

    private void cultivar() {
        own(Meaning.CULTIVAR, Sort.CULTIVAR, "cultivar");
        own(Meaning.TAXON, Sort.TAXON, "taxon");
        own(Meaning.EPITHET, Sort.EPITHET, "epithet");
    }

    private void fields(EntryKind kind, String act, Optional<EntryKind> actKind) {
        for (Form.Field field : Form.of(kind).fields()) {
            if (field.name().equals(Meaning.TAGS)) {
                continue;
            }
            String spoken = field.name().replace('_', ' ');
            Set<String> called = new TreeSet<>(Set.of(spoken));
            int unit = spoken.lastIndexOf(' ');
            List<String> all = new ArrayList<>();
            if (unit > 0 && UNITS.contains(spoken.substring(unit + 1))) {
                all.add(spoken.substring(0, unit));
            }
            all.addAll(called);
            String before = act.isEmpty() ? "" : act + " ";
            act(
                    act,
                    actKind,
                    field.name(),
                    sort(field),
                    all.stream().map(name -> before + name).toArray(String[]::new));
        }
    }

    private static Sort sort(Form.Field field) {
        String name = field.name();
        return switch (field.nature()) {
            case TAG -> Sort.TAG;
            case TAGS -> Sort.TAGS;
            case DAY -> Sort.DAY;
            case PERSON -> Sort.PERSON;
            case CHOICE -> Sort.CHOICE;
            case YES_NO -> Sort.YES_NO;
            case NUMBER -> COUNTS.contains(name) ? Sort.COUNT : Sort.NUMBER;
            case TEXT -> name.equals(Meaning.HORMONE) ? Sort.HORMONE : Sort.TEXT;
            case OTHER ->
                switch (name) {
                    case "cultivar", "stock_cultivar" -> Sort.CULTIVAR;
                    case "strength" -> Sort.STRENGTH;
                    case "price", "amount" -> Sort.MONEY;
                    case "mothers" -> Sort.MOTHERS;
                    case "findings" -> Sort.FINDINGS;
                    default -> Sort.TEXT;
                };
        };
    }

    private void own(String field, Sort sort, String... called) {
        act("", Optional.empty(), field, sort, called);
    }

    private void act(String act, Optional<EntryKind> kind, String field, Sort sort, String... called) {
        if (meanings.containsKey(called[0])) {
            return;
        }
        names.add(called[0]);
        for (String name : called) {
            meanings.putIfAbsent(name, new Meaning(act, kind, field, sort, "", called[0]));
        }
    }
}
