package ortet.lineage;

import java.io.Writer;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.jgrapht.Graph;
import org.jgrapht.graph.AsSubgraph;
import org.jgrapht.nio.Attribute;
import org.jgrapht.nio.AttributeType;
import org.jgrapht.nio.DefaultAttribute;
import org.jgrapht.nio.dot.DOTExporter;
import org.jgrapht.nio.graphml.GraphMLExporter;
import org.jgrapht.nio.graphml.GraphMLExporter.AttributeCategory;
import ortet.book.BookView;
import ortet.book.Lookup;
import ortet.entry.Words;
import ortet.nursery.Names;
import ortet.nursery.Part;
import ortet.nursery.Snapshot;
import ortet.nursery.TagsOfUnits;
import ortet.plant.Tag;
import ortet.plant.UnitNumber;
import ortet.value.Refused;

/**
 * Writes a family, or the whole nursery, as a graph that other programs read: units are nodes, each link is an edge from the
 * mother to what comes from her.
 *
 * <p>A node has {@code tag}, {@code kind}, {@code begun}, {@code state}, {@code growing}, {@code pending}, {@code sold},
 * {@code cultivar} (its own name, or by what it keeps the clone of) and {@code clone} (the tag of the first unit of its
 * clone), as far as they are known; an edge has {@code act}, {@code day} and {@code count}.
 */
public final class FamilyGraph {
    /** How a graph is written. */
    public enum Format {
        /** GraphML, an XML format for graphs. */
        GRAPHML,
        /** DOT, the language of Graphviz. */
        DOT
    }

    private static final Map<String, AttributeType> NODE = new LinkedHashMap<>();
    private static final Map<String, AttributeType> EDGE = new LinkedHashMap<>();

    static {
        NODE.put("tag", AttributeType.STRING);
        NODE.put("kind", AttributeType.STRING);
        NODE.put("begun", AttributeType.STRING);
        NODE.put("state", AttributeType.STRING);
        NODE.put("growing", AttributeType.INT);
        NODE.put("pending", AttributeType.INT);
        NODE.put("sold", AttributeType.INT);
        NODE.put("cultivar", AttributeType.STRING);
        NODE.put("clone", AttributeType.STRING);
        EDGE.put("act", AttributeType.STRING);
        EDGE.put("day", AttributeType.STRING);
        EDGE.put("count", AttributeType.INT);
    }

    private final Snapshot snapshot;
    private final Graph<Integer, Integer> graph;
    private final Clones clones;
    private final Names names;
    private final Map<Integer, Tag> tags;

    private FamilyGraph(BookView view, Snapshot snapshot, Graph<Integer, Integer> graph) {
        this.snapshot = snapshot;
        this.graph = graph;
        this.clones = Clones.of(snapshot);
        this.names = Names.of(snapshot);
        Set<Integer> named = new HashSet<>(graph.vertexSet());
        graph.vertexSet().forEach(unit -> named.add(Math.max(1, clones.first(unit))));
        this.tags = TagsOfUnits.of(view, named, snapshot.asOf());
    }

    /** Return the parts of a snapshot that are needed. */
    public static Set<Part> parts() {
        return EnumSet.of(Part.LINKS, Part.BEGINNINGS, Part.STANDINGS, Part.LEAVINGS, Part.NAMES);
    }

    /**
     * Return the graph of a family, up and down through every link, or of all units.
     *
     * @param of whose family; all units unless given
     * @throws Refused when there is no such unit, or none yet on that day
     */
    public static FamilyGraph of(BookView view, Snapshot snapshot, Optional<Tag> of) {
        Graph<Integer, Integer> all = snapshot.graph();
        if (of.isEmpty()) {
            return new FamilyGraph(view, snapshot, all);
        }
        UnitNumber unit = Lookup.unit(view, of.get());
        if (!snapshot.isThere(unit.value())) {
            throw Refused.because("before-it-began", of.get() + " had not begun on " + snapshot.asOf());
        }
        Set<Integer> family = new HashSet<>();
        reach(unit.value(), family, one -> {
            List<Integer> mothers = new ArrayList<>();
            for (int link = snapshot.firstUp(one); link < snapshot.endUp(one); link++) {
                mothers.add(snapshot.mother(link));
            }
            return mothers;
        });
        Set<Integer> below = new HashSet<>();
        reach(unit.value(), below, one -> {
            List<Integer> children = new ArrayList<>();
            for (int at = 0; at < snapshot.countDown(one); at++) {
                children.add(snapshot.child(snapshot.down(one, at)));
            }
            return children;
        });
        family.addAll(below);
        return new FamilyGraph(view, snapshot, new AsSubgraph<>(all, family));
    }

    private static void reach(int from, Set<Integer> found, Function<Integer, List<Integer>> next) {
        found.add(from);
        List<Integer> open = new ArrayList<>(found);
        for (int at = 0; at < open.size(); at++) {
            for (int other : next.apply(open.get(at))) {
                if (found.add(other)) {
                    open.add(other);
                }
            }
        }
    }

    /** Return how many units are in it. */
    public int units() {
        return graph.vertexSet().size();
    }

    /** Return how many links are in it. */
    public int links() {
        return graph.edgeSet().size();
    }

    /** Write it. */
    public void write(Format format, Writer writer) {
        switch (format) {
            case GRAPHML -> {
                GraphMLExporter<Integer, Integer> exporter = new GraphMLExporter<>(unit -> "u" + unit);
                exporter.setEdgeIdProvider(link -> "l" + link);
                exporter.setVertexAttributeProvider(this::node);
                exporter.setEdgeAttributeProvider(this::edge);
                NODE.forEach((name, type) -> exporter.registerAttribute(name, AttributeCategory.NODE, type));
                EDGE.forEach((name, type) -> exporter.registerAttribute(name, AttributeCategory.EDGE, type));
                exporter.exportGraph(graph, writer);
            }
            case DOT -> {
                DOTExporter<Integer, Integer> exporter = new DOTExporter<>(unit -> "u" + unit);
                exporter.setGraphIdProvider(() -> "family");
                exporter.setVertexAttributeProvider(unit -> {
                    Map<String, Attribute> attributes = new LinkedHashMap<>();
                    attributes.put(
                            "label",
                            DefaultAttribute.createAttribute(tags.get(unit).text()));
                    attributes.putAll(node(unit));
                    return attributes;
                });
                exporter.setEdgeAttributeProvider(this::edge);
                exporter.exportGraph(graph, writer);
            }
        }
    }

    private Map<String, Attribute> node(int unit) {
        Stands stands = Stands.of(snapshot, unit);
        Map<String, Attribute> attributes = new LinkedHashMap<>();
        attributes.put("tag", text(tags.get(unit).text()));
        attributes.put("kind", text(Words.of(stands.nature())));
        attributes.put("begun", text(snapshot.begun(unit).toString()));
        attributes.put("state", text(stands.toString()));
        attributes.put("growing", DefaultAttribute.createAttribute(stands.growing()));
        stands.pending().ifPresent(pending -> attributes.put("pending", DefaultAttribute.createAttribute(pending)));
        attributes.put("sold", DefaultAttribute.createAttribute(stands.sold()));
        if (names.name(unit) >= 0) {
            attributes.put(
                    "cultivar", text(snapshot.cultivars().get(names.name(unit)).toString()));
        }
        if (clones.first(unit) != Clones.SEVERAL) {
            attributes.put("clone", text(tags.get(clones.first(unit)).text()));
        }
        return attributes;
    }

    private Map<String, Attribute> edge(int link) {
        Map<String, Attribute> attributes = new LinkedHashMap<>();
        attributes.put("act", text(Words.of(snapshot.act(link))));
        attributes.put("day", text(snapshot.day(link).toString()));
        if (snapshot.count(link) != Snapshot.NONE) {
            attributes.put("count", DefaultAttribute.createAttribute(snapshot.count(link)));
        }
        return attributes;
    }

    private static Attribute text(String text) {
        return DefaultAttribute.createAttribute(text);
    }
}
