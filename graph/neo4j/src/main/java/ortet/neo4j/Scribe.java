package ortet.neo4j;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.neo4j.driver.Transaction;
import org.neo4j.driver.Values;
import ortet.book.Act;
import ortet.book.CanonicalText;
import ortet.book.Chain;
import ortet.book.Chained;
import ortet.book.Digest;
import ortet.book.Head;
import ortet.book.Link;
import ortet.book.Progress;
import ortet.book.Ruling;
import ortet.book.UnitFacts;
import ortet.book.UnitFacts.Nature;
import ortet.entry.Corrected;
import ortet.entry.CrossedOut;
import ortet.entry.Entry;
import ortet.entry.EntryId;
import ortet.entry.Form;
import ortet.entry.Recorded;
import ortet.entry.Words;
import ortet.plant.Person;
import ortet.plant.PersonNumber;
import ortet.plant.UnitNumber;
import ortet.value.Folded;
import ortet.value.When;

/**
 * Writes rulings within a transaction.
 *
 * <p>Of a unit that is there already, only what has changed is taken out and written anew.
 */
final class Scribe {
    /** How many units or entries go with one statement. */
    static final int AT_ONCE = 1000;

    private static final String STEP = "writing";
    private static final String DATED = "position: x[0], day: x[1], day_first: x[2], recorded_order: x[3]";

    /** Every statement finds what it needs by a key, so a plan once made is good however much there is. */
    private static final String KNOWN = "CYPHER replan=skip ";

    /** What there can be several of about a unit, each as a row: position, day, its first day, order, and more. */
    private enum Part {
        TAGS(
                "BEARS",
                "Tag",
                "unit: r[0], tag: x[4], folded: x[5], ",
                facts -> rows(
                        facts.tags(),
                        UnitFacts.TagUse::day,
                        UnitFacts.TagUse::order,
                        use -> List.of(use.tag().text(), Folded.of(use.tag().text())))),
        NAMES(
                "NAMED",
                "Cultivar",
                "cultivar",
                "is_true: x[5], ",
                facts -> rows(
                        facts.names(),
                        UnitFacts.Naming::day,
                        UnitFacts.Naming::order,
                        naming -> List.of(naming.cultivar().toString(), naming.isTrue() ? 1 : 0))),
        OUTCOMES(
                "CAME_OUT",
                "Outcome",
                "unit: r[0], fate: x[4], count: x[5], cause: x[6], ",
                facts -> rows(
                        facts.outcomes(),
                        UnitFacts.Outcome::day,
                        UnitFacts.Outcome::order,
                        outcome -> Arrays.asList(
                                Words.of(outcome.fate()),
                                outcome.count(),
                                outcome.cause().map(Words::of).orElse(null)))),
        STANDINGS(
                "STOOD",
                "Standing",
                "unit: r[0], pending: x[4], growing: x[5], ",
                facts -> rows(
                        facts.standings(),
                        UnitFacts.Standing::day,
                        UnitFacts.Standing::order,
                        standing -> Arrays.asList(standing.pending().orElse(null), standing.growing()))),
        POTTINGS(
                "POTTED",
                "Potting",
                "unit: r[0], container: x[4], ",
                facts -> rows(
                        facts.pottings(),
                        UnitFacts.Potting::day,
                        UnitFacts.Potting::order,
                        potting -> Collections.singletonList(potting.container().orElse(null)))),
        STAYS(
                "STOOD_AT",
                "Place",
                "place",
                "",
                facts -> rows(
                        facts.stays(),
                        UnitFacts.Stay::day,
                        UnitFacts.Stay::order,
                        stay -> List.of(stay.place().name()))),
        LEAVINGS(
                "LEFT",
                "Leaving",
                "unit: r[0], reason: x[4], count: x[5], person: x[6], ",
                facts -> rows(
                        facts.leavings(),
                        UnitFacts.Leaving::day,
                        UnitFacts.Leaving::order,
                        leaving -> Arrays.asList(
                                Words.of(leaving.reason()),
                                leaving.count(),
                                leaving.person().map(PersonNumber::value).orElse(null))));

        private final String create;
        private final String clear;
        private final Function<UnitFacts, List<List<Object>>> rows;

        /** A part that has nodes of its own. */
        Part(String way, String label, String own, Function<UnitFacts, List<List<Object>>> rows) {
            this.create = "CREATE (u)-[:" + way + "]->(:" + label + " {" + own + DATED + "})";
            this.clear = "UNWIND $units AS n MATCH (:Unit {unit: n})-[:" + way + "]->(x) DETACH DELETE x";
            this.rows = rows;
        }

        /** A part whose relationships lead to nodes that units share. */
        Part(String way, String label, String key, String own, Function<UnitFacts, List<List<Object>>> rows) {
            this.create =
                    "MERGE (o:" + label + " {" + key + ": x[4]}) CREATE (u)-[:" + way + " {" + own + DATED + "}]->(o)";
            this.clear = "UNWIND $units AS n MATCH (:Unit {unit: n})-[x:" + way + "]->() DELETE x";
            this.rows = rows;
        }

        private static <T> List<List<Object>> rows(
                List<T> parts, Function<T, When> day, Function<T, Long> order, Function<T, List<?>> more) {
            List<List<Object>> rows = new ArrayList<>(parts.size());
            for (T part : parts) {
                When when = day.apply(part);
                List<Object> row = new ArrayList<>(8);
                row.add(rows.size());
                row.add(when.toString());
                row.add(when.first().toString());
                row.add(order.apply(part));
                row.addAll(more.apply(part));
                rows.add(row);
            }
            return rows;
        }
    }

    private static final String PERSONS = "UNWIND $rows AS row CREATE (p:Person) SET p = row";
    private static final String KEEP = "MATCH (p:Person {number: $row.number}) SET p = $row";
    private static final String ENTRIES = "UNWIND $rows AS r CREATE (e:Entry {recorded_order: r[0], id: r[1],"
            + " kind: r[2], day: r[3], day_first: r[4], day_last: r[5], by_person: r[6], recorded_at: r[7],"
            + " fields: r[8], digest: r[9]}) SET e += r[10]";
    private static final String AMENDMENTS = "UNWIND $rows AS r MATCH (a:Entry {recorded_order: r[0]})"
            + " MATCH (t:Entry {id: r[1]}) MERGE (a)-[:AMENDS]->(t)";
    private static final String HEAD = "MATCH (b:Book {one: 1}) SET b.id = $id, b.zone = $zone,"
            + " b.recorded_order = $order, b.digest = $digest, b.last_unit = $last";
    private static final String UNIT = "UNWIND $rows AS r MERGE (u:Unit {unit: r[0]}) SET u += r[1]"
            + " REMOVE u:Plant:Layer:Batch:Sport" + labels() + parts();
    private static final String NAMES = "UNWIND $rows AS r MATCH (e:Entry {recorded_order: r[0]})"
            + " MATCH (u:Unit {unit: r[1]}) CREATE (e)-[:NAMES]->(u)";
    private static final String UNNAMES =
            "UNWIND $rows AS r MATCH (:Entry {recorded_order: r[0]})" + "-[x:NAMES]->(:Unit {unit: r[1]}) DELETE x";
    private static final String CLEAR_LINKS =
            "UNWIND $units AS n MATCH (:Unit {unit: n})-[x:" + Neo4jBookView.acts() + "]->() DELETE x";
    private static final String CLEAR_NAMES = "UNWIND $units AS n MATCH (:Unit {unit: n})<-[x:NAMES]-() DELETE x";
    private static final String VANISH = "UNWIND $units AS n MATCH (u:Unit {unit: n}) DETACH DELETE u";
    private static final String CHAIN = "UNWIND $units AS n MATCH (:Unit {unit: n})-[:POTTED]->(p:Potting)"
            + " WITH n, p ORDER BY p.position WITH n, collect(p) AS pots UNWIND range(0, size(pots) - 2) AS i"
            + " WITH pots[i] AS one, pots[i + 1] AS next CREATE (one)-[:NEXT]->(next)";

    private static String labels() {
        StringBuilder labels = new StringBuilder();
        for (Nature nature : Nature.values()) {
            String word = Words.of(nature);
            labels.append(" FOREACH (x IN CASE r[1].nature WHEN '")
                    .append(word)
                    .append("' THEN [1] ELSE [] END | SET u:")
                    .append(Character.toUpperCase(word.charAt(0)))
                    .append(word.substring(1))
                    .append(')');
        }
        return labels.toString();
    }

    private static String parts() {
        StringBuilder parts = new StringBuilder();
        for (Part part : Part.values()) {
            parts.append(" FOREACH (x IN r[")
                    .append(2 + part.ordinal())
                    .append("] | ")
                    .append(part.create)
                    .append(')');
        }
        return parts.toString();
    }

    private static String link(Act act) {
        return "UNWIND $rows AS r MATCH (c:Unit {unit: r[0]}) MERGE (m:Unit {unit: r[1]}) CREATE (c)-[:" + act.name()
                + " {position: r[2], day: r[3], day_first: r[4], recorded_order: r[5], count: r[6]}]->(m)";
    }

    private final Transaction transaction;

    /** Write within a transaction. */
    Scribe(Transaction transaction) {
        this.transaction = transaction;
    }

    private void run(String cypher, String name, Object value) {
        transaction.run(KNOWN + cypher, Values.parameters(name, value)).consume();
    }

    private void rows(String cypher, Collection<?> rows) {
        if (!rows.isEmpty()) {
            run(cypher, "rows", rows);
        }
    }

    private void units(String cypher, Collection<Integer> units) {
        if (!units.isEmpty()) {
            run(cypher, "units", units);
        }
    }

    /**
     * Write a ruling.
     *
     * @param before the book as the judge saw it
     */
    void write(Ruling ruling, Neo4jBookView before, Progress progress) {
        long total = ruling.entries().size() + (long) ruling.facts().size();
        long done = 0;
        persons(ruling.persons());
        for (List<Chained> some : chunks(ruling.entries())) {
            entries(some);
            progress.at(STEP, done += some.size(), total);
        }
        List<Integer> gone = ruling.vanished().stream().map(UnitNumber::value).toList();
        vanish(gone);
        int lastUnit = before.head().lastUnit();
        for (List<UnitFacts> some : chunks(ruling.facts())) {
            List<Told> told = new ArrayList<>(some.size());
            for (UnitFacts facts : some) {
                told.add(new Told(
                        facts, facts.unit().value() <= lastUnit ? before.facts(facts.unit()) : Optional.empty()));
            }
            told(told);
            progress.at(STEP, done += some.size(), total);
        }
        head(ruling.head());
    }

    private static <T> List<List<T>> chunks(List<T> all) {
        List<List<T>> chunks = new ArrayList<>();
        for (int from = 0; from < all.size(); from += AT_ONCE) {
            chunks.add(all.subList(from, Math.min(all.size(), from + AT_ONCE)));
        }
        return chunks;
    }

    /** Write where the book stands. */
    void head(Head head) {
        transaction
                .run(
                        HEAD,
                        Values.parameters(
                                "id",
                                head.bookId().toString(),
                                "zone",
                                head.zone().getId(),
                                "order",
                                head.order(),
                                "digest",
                                Optional.of(head.digest())
                                        .filter(digest -> !digest.equals(Chain.START))
                                        .map(Digest::hex)
                                        .orElse(null),
                                "last",
                                head.lastUnit()))
                .consume();
    }

    /** Write new persons. */
    void persons(List<Person> persons) {
        rows(PERSONS, persons.stream().map(Scribe::row).toList());
    }

    /** Write a person's particulars over those that were kept before. */
    void keep(Person person) {
        run(KEEP, "row", row(person));
    }

    private static Map<String, Object> row(Person person) {
        Map<String, Object> row = new HashMap<>();
        row.put("number", person.number().value());
        row.put("name", person.name().orElse(null));
        row.put("folded", person.name().map(Folded::of).orElse(null));
        row.put("role", Words.of(person.role()));
        row.put("particulars", person.particulars().orElse(null));
        return row;
    }

    /** Write entries, and which they amend. */
    void entries(List<Chained> entries) {
        List<List<Object>> rows = new ArrayList<>(entries.size());
        for (Chained chained : entries) {
            rows.add(row(chained, CanonicalText.fields(chained.recorded().entry())));
        }
        entryRows(rows);
        amendments(entries);
    }

    /** Write entries that are rows already. */
    void entryRows(List<List<Object>> rows) {
        rows(ENTRIES, rows);
    }

    /** Write which entries some entries amend. */
    void amendments(List<Chained> entries) {
        List<List<Object>> rows = new ArrayList<>();
        for (Chained chained : entries) {
            target(chained.recorded().entry())
                    .ifPresent(target -> rows.add(List.of(chained.recorded().order(), target.toString())));
        }
        rows(AMENDMENTS, rows);
    }

    /** Say of which entries the facts are that are being filled in: those that end on a digest. */
    void fillingWith(Digest digest) {
        run("MATCH (b:Book {one: 1}) SET b.filling_digest = $digest", "digest", digest.hex());
    }

    /** Take out which entries amend which. */
    void forgetAmendments() {
        transaction.run("MATCH (:Entry)-[x:AMENDS]->() DELETE x").consume();
    }

    /** Return an entry as a row. */
    static List<Object> row(Chained chained, String fields) {
        Recorded recorded = chained.recorded();
        When day = recorded.proposed().day();
        return Arrays.asList(
                recorded.order(),
                recorded.proposed().id().toString(),
                recorded.entry().kind().word(),
                day.toString(),
                day.first().toString(),
                day.last().toString(),
                recorded.proposed().by().map(PersonNumber::value).orElse(null),
                CanonicalText.INSTANT.format(recorded.recordedAt()),
                fields,
                chained.digest().hex(),
                Form.write(recorded.entry()));
    }

    /** Return which entry an entry amends. */
    static Optional<EntryId> target(Entry entry) {
        if (entry instanceof Corrected corrected) {
            return Optional.of(corrected.target());
        }
        return entry instanceof CrossedOut crossedOut ? Optional.of(crossedOut.target()) : Optional.empty();
    }

    /** Take out units of which nothing is left. */
    void vanish(Collection<Integer> units) {
        for (Part part : Part.values()) {
            units(part.clear, units);
        }
        units(VANISH, units);
    }

    /**
     * The facts of a unit.
     *
     * @param now as they are to be
     * @param before as they are written; empty when the unit is not
     */
    private record Told(UnitFacts now, Optional<UnitFacts> before) {
        boolean isChanged(Function<UnitFacts, ?> part) {
            return before.isPresent() && !part.apply(before.get()).equals(part.apply(now));
        }
    }

    /** Write the facts of units of which nothing is written yet. */
    void fresh(List<UnitFacts> facts) {
        told(facts.stream().map(now -> new Told(now, Optional.empty())).toList());
    }

    /** Take out whatever is derived of units, and write it anew. */
    void anew(List<UnitFacts> facts) {
        List<Integer> units = facts.stream().map(now -> now.unit().value()).toList();
        for (Part part : Part.values()) {
            units(part.clear, units);
        }
        units(CLEAR_LINKS, units);
        units(CLEAR_NAMES, units);
        fresh(facts);
    }

    private void told(List<Told> units) {
        Map<Part, List<Integer>> cleared = new EnumMap<>(Part.class);
        List<Integer> relinked = new ArrayList<>();
        List<Integer> chained = new ArrayList<>();
        List<List<Object>> rows = new ArrayList<>(units.size());
        Map<Act, List<List<Object>>> links = new EnumMap<>(Act.class);
        List<List<Object>> names = new ArrayList<>();
        List<List<Object>> unnames = new ArrayList<>();
        for (Told told : units) {
            UnitFacts now = told.now();
            int unit = now.unit().value();
            List<Object> row = new ArrayList<>();
            row.add(unit);
            row.add(scalars(now));
            for (Part part : Part.values()) {
                boolean changed = told.isChanged(part.rows);
                if (changed) {
                    cleared.computeIfAbsent(part, first -> new ArrayList<>()).add(unit);
                }
                row.add(told.before().isEmpty() || changed ? part.rows.apply(now) : List.of());
                if (part == Part.POTTINGS
                        && now.pottings().size() > 1
                        && (told.before().isEmpty() || changed)) {
                    chained.add(unit);
                }
            }
            rows.add(row);
            if (told.isChanged(UnitFacts::links)) {
                relinked.add(unit);
            }
            if (told.before().isEmpty() || told.isChanged(UnitFacts::links)) {
                links(now.links(), links);
            }
            difference(told, names, unnames);
        }
        cleared.forEach((part, gone) -> units(part.clear, gone));
        units(CLEAR_LINKS, relinked);
        rows(UNIT, rows);
        links.forEach((act, some) -> rows(link(act), some));
        units(CHAIN, chained);
        rows(UNNAMES, unnames);
        rows(NAMES, names);
    }

    private static void difference(Told told, List<List<Object>> names, List<List<Object>> unnames) {
        int unit = told.now().unit().value();
        Set<Long> kept = new HashSet<>(told.before().map(UnitFacts::entries).orElse(List.of()));
        for (long order : told.now().entries()) {
            if (!kept.remove(order)) {
                names.add(List.of(order, unit));
            }
        }
        kept.forEach(order -> unnames.add(List.of(order, unit)));
    }

    private static Map<String, Object> scalars(UnitFacts facts) {
        Map<String, Object> row = new HashMap<>();
        row.put("nature", Words.of(facts.nature()));
        row.put("tag", facts.tag().text());
        row.put("position", facts.begun().position());
        row.put("day", facts.begun().day().toString());
        row.put("day_first", facts.begun().day().first().toString());
        row.put("recorded_order", facts.begun().order());
        Optional<UnitFacts.Cohort> cohort = facts.cohort();
        row.put("method", cohort.map(set -> Words.of(set.method())).orElse(null));
        row.put("set_day", cohort.map(set -> set.day().toString()).orElse(null));
        row.put("set_day_first", cohort.map(set -> set.day().first().toString()).orElse(null));
        row.put("set_order", cohort.map(UnitFacts.Cohort::order).orElse(null));
        row.put(
                "by_person",
                cohort.flatMap(UnitFacts.Cohort::by).map(PersonNumber::value).orElse(null));
        row.put("count", cohort.flatMap(UnitFacts.Cohort::count).orElse(null));
        row.put("root", cohort.map(set -> set.root().value()).orElse(null));
        row.put(
                "first_named",
                facts.names().stream()
                        .map(naming -> naming.day().first().toString())
                        .min(String::compareTo)
                        .orElse(null));
        return row;
    }

    private static void links(List<Link> all, Map<Act, List<List<Object>>> links) {
        int position = 0;
        for (Link link : all) {
            links.computeIfAbsent(link.act(), first -> new ArrayList<>())
                    .add(Arrays.asList(
                            link.child().value(),
                            link.mother().value(),
                            position++,
                            link.day().toString(),
                            link.day().first().toString(),
                            link.order(),
                            link.count().orElse(null)));
        }
    }
}
