package ortet.commands;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import ortet.book.BookStore;
import ortet.book.BookView;
import ortet.book.Head;
import ortet.book.Judge;
import ortet.book.Listed;
import ortet.book.Lookup;
import ortet.book.Progress;
import ortet.book.Proposal;
import ortet.entry.Entry;
import ortet.entry.EntryId;
import ortet.entry.EntryKind;
import ortet.entry.Form;
import ortet.entry.Planned;
import ortet.entry.Proposed;
import ortet.entry.Recorded;
import ortet.entry.Share;
import ortet.entry.Words;
import ortet.inventory.FreeTag;
import ortet.inventory.InUse;
import ortet.inventory.Places;
import ortet.inventory.TagBeginnings;
import ortet.line.Attendant;
import ortet.line.Job;
import ortet.line.Suggestion;
import ortet.line.Wanted;
import ortet.plant.CultivarName;
import ortet.plant.Person;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.plant.Tags;
import ortet.value.OrtetException;
import ortet.value.When;

/**
 * Sits beside the prompt: proposes what the book knows, and tells what is remembered.
 *
 * <p>Every proposal is asked of the book at the moment of asking, by questions that end soon however large it is: of tags
 * only as many are read as are shown.
 */
public final class Companion implements Attendant {
    /** How many tags are proposed whole. */
    private static final int MOST_TAGS = 60;

    private static final int MOST_SHOWN = 40;
    private static final String FROM_TO = "..";
    private static final Set<String> RECENT_TEXTS = Set.of("medium", "wrap", "hormone", "size", "grade");
    private static final Set<String> CONTAINERS = Set.of("into", "container");
    private static final Map<String, EntryKind> BEGINNINGS = Map.ofEntries(
            Map.entry("acquire", EntryKind.ACQUIRED),
            Map.entry("layer set", EntryKind.LAYER_SET),
            Map.entry("cuttings strike", EntryKind.CUTTINGS_STRUCK),
            Map.entry("cuttings draw", EntryKind.DRAWN),
            Map.entry("graft", EntryKind.GRAFT_WORKED),
            Map.entry("sow", EntryKind.SEED_SOWN),
            Map.entry("divide", EntryKind.DIVIDED),
            Map.entry("sport", EntryKind.SPORT_FOUND),
            Map.entry("split", EntryKind.SPLIT),
            Map.entry("merge", EntryKind.MERGED),
            Map.entry("found", EntryKind.FOUND_UNTAGGED));

    private final Shelf shelf;
    private final Sitting sitting;
    private final Judge judge;

    /** Make a companion who knows the books of a shelf and what is remembered. */
    public Companion(Shelf shelf, Sitting sitting, Judge judge) {
        this.shelf = shelf;
        this.sitting = sitting;
        this.judge = judge;
    }

    // ---- what is told ----

    @Override
    public void take(String book) {
        sitting.book(Optional.of(new Whereabouts(book)));
    }

    @Override
    public List<String> greeting() {
        Whereabouts path = shelf.path(Optional.empty());
        if (!path.mayBeThere()) {
            return List.of("no book " + path + " yet; \"book new\" makes one, \"use --book FILE\" takes another");
        }
        try {
            BookStore store = shelf.open(path);
            Head head = store.read(BookView::head);
            rehearse(store);
            return List.of("the book " + path + ": " + Counts.of(head.order(), "entry", "entries") + ", time zone "
                    + head.zone().getId());
        } catch (OrtetException trouble) {
            return List.of(trouble.lines().get(0));
        }
    }

    /**
     * Rule on a layer such as the next one may be, and write nothing: what the first line would have to wait for is loaded
     * while the prompt opens.
     */
    private void rehearse(BookStore store) {
        try {
            store.read(this::rehearse);
        } catch (OrtetException refused) {
            // What stands in the way of such a layer is told to whoever sets one.
        }
    }

    private Optional<Tag> rehearse(BookView view) {

        Optional<Tag> next = FreeTag.of(view, EntryKind.LAYER_SET);
        List<Tag> mother = view.tagsFrom(" ", 1);
        if (next.isPresent() && !mother.isEmpty()) {
            Entry layer = Draft.of(EntryKind.LAYER_SET, List.of(next.get()))
                    .put("mother", mother.get(0))
                    .entry();
            Proposed proposed =
                    new Proposed(EntryId.random(), When.on(judge.today(view.head())), Optional.empty(), layer);
            judge.rule(Proposal.of(proposed), view, Progress.NONE);
        }
        return next;
    }

    @Override
    public List<String> lead() {
        List<String> lead = new ArrayList<>();
        sitting.by().ifPresent(lead::add);
        sitting.on().map(When::toString).ifPresent(lead::add);
        sitting.place().map(Place::toString).ifPresent(lead::add);
        sitting.book().map(Whereabouts::brief).ifPresent(lead::add);
        return lead;
    }

    @Override
    public Optional<String> remembered(Wanted wanted) {
        return switch (wanted.option()) {
            case "by" -> isPerson(wanted) ? sitting.by() : Optional.empty();
            case "on" -> wanted.type() == When.class ? sitting.on().map(When::toString) : Optional.empty();
            case "place" -> wanted.type() == Place.class ? sitting.place().map(Place::toString) : Optional.empty();
            default -> Optional.empty();
        };
    }

    @Override
    public Optional<String> hint(Wanted wanted) {
        if (!wanted.begins() || !BEGINNINGS.containsKey(wanted.command())) {
            return Optional.empty();
        }
        return ask(wanted, view -> FreeTag.of(view, BEGINNINGS.get(wanted.command())))
                .flatMap(tag -> tag)
                .map(tag -> "the next free one is " + tag);
    }

    @Override
    public Optional<String> doubt(Wanted wanted, List<String> values) {
        try {
            if (isTag(wanted)) {
                return ask(wanted, view -> tagDoubt(view, wanted, values)).flatMap(told -> told);
            }
            return isPerson(wanted)
                    ? ask(wanted, view -> personDoubt(view, values.get(0))).flatMap(told -> told)
                    : Optional.empty();
        } catch (OrtetException refused) {
            return Optional.of(refused.lines().get(0));
        }
    }

    private static Optional<String> tagDoubt(BookView view, Wanted wanted, List<String> values) {
        List<String> bare = new ArrayList<>();
        for (String value : values) {
            for (String part : value.split(",")) {
                bare.add(part.contains(":") ? part.substring(0, part.indexOf(':')) : part);
            }
        }
        for (Tag tag : Tags.parse(bare)) {
            boolean known = view.unit(tag).isPresent();
            if (known && wanted.begins()) {
                return Optional.of(tag + " names another already");
            }
            if (!known && !wanted.begins()) {
                List<String> near = view.nearest(tag);
                return Optional.of(
                        "no plant or batch " + tag + (near.isEmpty() ? "" : "; nearest: " + String.join(", ", near)));
            }
        }
        return Optional.empty();
    }

    private static Optional<String> personDoubt(BookView view, String name) {
        try {
            Lookup.person(view, name);
            return Optional.empty();
        } catch (OrtetException unknown) {
            return Optional.of(unknown.lines().get(0) + " (\"person add\" makes one known)");
        }
    }

    // ---- what is proposed ----

    @Override
    public List<Suggestion> values(Wanted wanted) {
        if (wanted.option().equals("zone")) {
            return plain(new TreeSet<>(ZoneId.getAvailableZoneIds()));
        }
        if (wanted.command().equals("record")) {
            return jobs(wanted.words());
        }
        if (wanted.command().equals("plan show") && wanted.isWord()
                || wanted.command().equals("plan") && wanted.option().equals("keep")) {
            return ask(wanted, Companion::plans).orElse(List.of());
        }
        if (wanted.command().equals("enter") && wanted.isWord()) {
            return ofEntry(wanted);
        }
        if (wanted.command().equals("correct") && wanted.option().equals("field")) {
            return ask(wanted, view -> fields(view, wanted)).orElse(List.of());
        }
        if (isTag(wanted)) {
            return ask(wanted, view -> wanted.begins() ? newTags(view, wanted) : tags(view, wanted.begun()))
                    .orElse(List.of());
        }
        if (isPerson(wanted)) {
            return ask(wanted, Companion::persons).orElse(List.of());
        }
        if (wanted.type() == CultivarName.class || wanted.option().equals("cultivar")) {
            return ask(wanted, Companion::cultivars).orElse(List.of());
        }
        if (wanted.type() == Place.class) {
            return ask(wanted, Companion::places).orElse(List.of());
        }
        return texts(wanted, wanted.option());
    }

    /** Return the words with which names of jobs go on. */
    private static List<Suggestion> jobs(List<String> before) {
        Set<String> next = new TreeSet<>();
        for (Job job : Jobs.ALL) {
            List<String> words = List.of(job.name().split(" "));
            if (words.size() > before.size() && words.subList(0, before.size()).equals(before)) {
                next.add(words.get(before.size()));
            }
        }
        return plain(next);
    }

    private List<Suggestion> texts(Wanted wanted, String column) {
        if (CONTAINERS.contains(column)) {
            return ask(wanted, view -> plain(InUse.containers(view))).orElse(List.of());
        }
        return RECENT_TEXTS.contains(column)
                ? ask(wanted, view -> plain(InUse.texts(view, column))).orElse(List.of())
                : List.of();
    }

    private static boolean isTag(Wanted wanted) {
        return wanted.type() == Tag.class
                || wanted.type() == TagList.class
                || wanted.type() == Share.class
                || wanted.command().equals("seen")
                        && wanted.isWord()
                        && wanted.shown().equals("TAG");
    }

    private static boolean isPerson(Wanted wanted) {
        return wanted.shown().equals("PERSON");
    }

    /** Put a question to the book that the line is about; nothing where there is no book. */
    private <T> Optional<T> ask(Wanted wanted, Function<BookView, T> question) {
        Whereabouts path = shelf.path(Optional.ofNullable(wanted.options().get(Shelf.OPTION)));
        return path.mayBeThere() ? Optional.of(shelf.open(path).read(question)) : Optional.empty();
    }

    private static List<Suggestion> plain(Set<String> texts) {
        return texts.stream().map(Suggestion::of).toList();
    }

    private static List<Suggestion> tags(BookView view, String begun) {
        int dots = begun.lastIndexOf(FROM_TO);
        String before = dots < 0 ? "" : begun.substring(0, dots + FROM_TO.length());
        String rest = begun.substring(before.length());
        if (rest.contains(":")) {
            return List.of();
        }
        return TagBeginnings.of(view, rest, MOST_TAGS).stream()
                .map(one ->
                        one.whole() ? Suggestion.of(before + one.text()) : Suggestion.begun(before + one.text(), ""))
                .toList();
    }

    private static List<Suggestion> newTags(BookView view, Wanted wanted) {
        if (wanted.begun().contains(FROM_TO)) {
            return List.of();
        }
        String begun = wanted.begun();
        Optional<Tag> next = begun.isEmpty() ? Optional.empty() : FreeTag.after(view, begun.replaceFirst("\\d+$", ""));
        next = next.or(() -> Optional.ofNullable(BEGINNINGS.get(wanted.command()))
                .flatMap(kind -> FreeTag.of(view, kind))
                .filter(tag -> tag.text().regionMatches(true, 0, begun, 0, begun.length())));
        return next.stream()
                .map(tag -> Suggestion.of(tag.text(), "the next free one"))
                .toList();
    }

    private static List<Suggestion> persons(BookView view) {
        List<Suggestion> persons = new ArrayList<>();
        for (Person person : view.persons()) {
            person.name().ifPresent(name -> persons.add(Suggestion.of(name, Words.of(person.role()))));
        }
        return persons;
    }

    private static List<Suggestion> cultivars(BookView view) {
        return InUse.cultivars(view).stream()
                .map(name -> Suggestion.of(name.toString()))
                .toList();
    }

    /** Return the names of the plans that are kept, the latest spelling of each. */
    private static List<Suggestion> plans(BookView view) {
        Map<String, Suggestion> byName = new TreeMap<>();
        for (Listed listed : Listed.plans(view, LocalDate.MAX)) {
            Planned plan = (Planned) listed.entry();
            byName.put(
                    plan.name().toLowerCase(Locale.ROOT),
                    Suggestion.of(plan.name(), plan.wanted() + " of " + plan.cultivar() + " by " + plan.wantedBy()));
        }
        return List.copyOf(byName.values());
    }

    private static List<Suggestion> places(BookView view) {
        return Places.of(view).all().stream()
                .map(place -> Suggestion.of(place.name()))
                .toList();
    }

    // ---- entries of any kind ----

    private List<Suggestion> ofEntry(Wanted wanted) {
        if (wanted.words().isEmpty()) {
            return EntryKind.words().stream().map(Suggestion::of).toList();
        }
        Optional<EntryKind> kind = EntryKind.of(wanted.words().get(0));
        if (kind.isEmpty()) {
            return List.of();
        }
        int equals = wanted.begun().indexOf('=');
        if (equals > 0) {
            String name =
                    wanted.begun().substring(0, equals).toLowerCase(Locale.ROOT).replace('-', '_');
            String before = wanted.begun().substring(0, equals + 1);
            return Form.of(kind.get())
                    .field(name)
                    .map(field -> ofField(field, before, wanted))
                    .orElse(List.of());
        }
        List<Suggestion> proposals = new ArrayList<>();
        for (Form.Field field : Form.of(kind.get()).fields()) {
            boolean given = wanted.words().stream().anyMatch(word -> word.startsWith(field.name() + "="));
            if (!field.name().equals("tags") && !given) {
                proposals.add(Suggestion.begun(field.name() + "=", field.required() ? "always needed" : ""));
            }
        }
        if (!wanted.begun().isEmpty()) {
            ask(wanted, view -> tags(view, wanted.begun())).ifPresent(proposals::addAll);
        }
        return proposals;
    }

    private List<Suggestion> ofField(Form.Field field, String before, Wanted wanted) {
        String begun = wanted.begun().substring(before.length());
        Optional<List<Suggestion>> found = switch (field.nature()) {
            case CHOICE ->
                Optional.of(field.choices().stream().map(Suggestion::of).toList());
            case YES_NO -> Optional.of(List.of(Suggestion.of("yes"), Suggestion.of("no")));
            case PERSON -> ask(wanted, Companion::persons);
            case TAG, TAGS -> ask(wanted, view -> tags(view, begun));
            case TEXT -> Optional.of(texts(wanted, field.name()));
            case OTHER -> ofName(field.name(), wanted);
            case NUMBER, DAY -> Optional.empty();
        };
        return found.orElse(List.of()).stream().map(one -> one.after(before)).toList();
    }

    private Optional<List<Suggestion>> ofName(String column, Wanted wanted) {
        return switch (column) {
            case "cultivar", "stock_cultivar" -> ask(wanted, Companion::cultivars);
            case "place", "within" -> ask(wanted, Companion::places);
            default -> Optional.empty();
        };
    }

    private static String brief(String text) {
        return "is " + (text.length() > MOST_SHOWN ? text.substring(0, MOST_SHOWN) + "…" : text);
    }

    private static List<Suggestion> fields(BookView view, Wanted wanted) {
        String number = wanted.words().isEmpty() ? "" : wanted.words().get(0).replaceFirst("^#", "");
        Optional<Recorded> entry = number.matches("\\d{1,15}") ? view.entry(Long.parseLong(number)) : Optional.empty();
        List<Suggestion> fields = new ArrayList<>(List.of(Suggestion.of("day"), Suggestion.of("by")));
        entry.ifPresent(recorded -> {
            Map<String, String> texts = Form.write(recorded.entry());
            Form.of(recorded.entry().kind())
                    .fields()
                    .forEach(field -> fields.add(Suggestion.of(
                            field.name(),
                            Optional.ofNullable(texts.get(field.name()))
                                    .map(Companion::brief)
                                    .orElse(""))));
        });
        return fields;
    }
}
