package ortet.lineage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import guru.nidi.graphviz.model.Link;
import guru.nidi.graphviz.model.MutableGraph;
import guru.nidi.graphviz.model.MutableNode;
import guru.nidi.graphviz.parse.Parser;
import java.io.StringReader;
import java.io.StringWriter;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import javax.xml.parsers.DocumentBuilderFactory;
import org.jgrapht.graph.DefaultEdge;
import org.jgrapht.graph.DirectedMultigraph;
import org.jgrapht.nio.graphml.GraphMLImporter;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import ortet.book.Diary;
import ortet.nursery.Snapshot;
import ortet.plant.Tag;

/** Families as GraphML and DOT, read back by others. */
class FamilyGraphTests {
    private static final String GRAPHML = "http://graphml.graphdrawing.org/xmlns";

    private final Diary diary = new Diary();

    @BeforeEach
    void growAFamily() {
        diary.write(
                "2010-03-01 acquired K-1; cultivar=Acer palmatum 'Rosé & <Co>'",
                "2010-03-01 acquired R-1; count=9",
                "2010-03-01 acquired K-2",
                "2011-05-01 layer-set J-1 J-2; mother=K-1",
                "2011-09-01 severed J-1 J-2",
                "2012-03-01 graft-worked G-1; scion=J-1; stock=R-1",
                "2012-06-01 cuttings-struck T-1; mothers=J-2:12; count=12",
                "2013-03-01 seed-sown S-1; count=4; seed_parent=J-2; pollen_parent=J-2");
    }

    private String written(FamilyGraph.Format format, Optional<Tag> of) {
        StringWriter text = new StringWriter();
        diary.store().read(view -> {
            Snapshot snapshot = Snapshot.of(view, LocalDate.of(2020, 1, 1), FamilyGraph.parts());
            FamilyGraph.of(view, snapshot, of).write(format, text);
            return null;
        });
        return text.toString();
    }

    private static Document xml(String text) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
        return factory.newDocumentBuilder().parse(new InputSource(new StringReader(text)));
    }

    private static List<Element> all(Document document, String name) {
        NodeList nodes = document.getElementsByTagNameNS(GRAPHML, name);
        List<Element> found = new ArrayList<>();
        for (int at = 0; at < nodes.getLength(); at++) {
            found.add((Element) nodes.item(at));
        }
        return found;
    }

    private static Map<String, String> data(Document document, Element element) {
        Map<String, String> names = new HashMap<>();
        all(document, "key").forEach(key -> names.put(key.getAttribute("id"), key.getAttribute("attr.name")));
        Map<String, String> found = new TreeMap<>();
        NodeList data = element.getElementsByTagNameNS(GRAPHML, "data");
        for (int at = 0; at < data.getLength(); at++) {
            Element one = (Element) data.item(at);
            found.put(names.get(one.getAttribute("key")), one.getTextContent());
        }
        return found;
    }

    /** By the reader of the JDK, against the structure that GraphML has (Brandes and others 2002). */
    @Test
    void isGraphMLWithANodeForEachUnitAndAnEdgeForEachLink() throws Exception {
        Document document = xml(written(FamilyGraph.Format.GRAPHML, Optional.empty()));
        assertEquals("graphml", document.getDocumentElement().getLocalName());
        assertEquals("directed", all(document, "graph").get(0).getAttribute("edgedefault"));
        Map<String, Map<String, String>> nodes = new TreeMap<>();
        all(document, "node").forEach(node -> nodes.put(node.getAttribute("id"), data(document, node)));
        assertEquals(8, nodes.size());
        assertEquals(
                Map.of(
                        "tag", "G-1",
                        "kind", "plant",
                        "begun", "2012-03-01",
                        "state", "pending",
                        "growing", "0",
                        "pending", "1",
                        "sold", "0",
                        "cultivar", "Acer palmatum 'Rosé & <Co>'",
                        "clone", "K-1"),
                nodes.get("u" + diary.unit("G-1")));
        List<Element> edges = all(document, "edge");
        assertEquals(7, edges.size());
        TreeSet<String> told = new TreeSet<>();
        edges.forEach(edge -> {
            assertTrue(nodes.containsKey(edge.getAttribute("source")), edge.getAttribute("source"));
            told.add(nodes.get(edge.getAttribute("source")).get("tag") + ">"
                    + nodes.get(edge.getAttribute("target")).get("tag") + " " + data(document, edge));
        });
        assertTrue(told.contains("J-2>T-1 {act=struck-from, count=12, day=2012-06-01}"), told.toString());
        assertTrue(told.contains("J-2>S-1 {act=pollen-of, day=2013-03-01}"), told.toString());
    }

    @Test
    void isReadBackByTheImporterOfTheLibrary() {
        DirectedMultigraph<String, DefaultEdge> read = new DirectedMultigraph<>(DefaultEdge.class);
        GraphMLImporter<String, DefaultEdge> importer = new GraphMLImporter<>();
        importer.setVertexFactory(id -> id);
        importer.setSchemaValidation(true);
        importer.importGraph(read, new StringReader(written(FamilyGraph.Format.GRAPHML, Optional.empty())));
        assertEquals(8, read.vertexSet().size());
        assertEquals(
                2,
                read.getAllEdges("u" + diary.unit("J-2"), "u" + diary.unit("S-1"))
                        .size());
    }

    /** By the parser of graphviz-java, which shares nothing with the exporter. */
    @Test
    void isDotThatAnotherLibraryReads() throws Exception {
        MutableGraph read = new Parser().read(written(FamilyGraph.Format.DOT, Optional.empty()));
        assertTrue(read.isDirected());
        assertEquals("family", read.name().toString());
        Map<String, String> labels = new TreeMap<>();
        List<String> edges = new ArrayList<>();
        for (MutableNode node : read.nodes()) {
            labels.put(node.name().toString(), String.valueOf(node.get("label")));
        }
        for (Link link : read.edges()) {
            edges.add(labels.get(link.from().name().toString()) + ">"
                    + labels.get(link.to().name().toString()) + " " + link.get("act"));
        }
        assertEquals(8, labels.size());
        assertEquals(7, edges.size());
        assertTrue(edges.contains("R-1>G-1 rootstock-of"), edges.toString());
    }

    @Test
    void writesOneFamilyUpAndDown() throws Exception {
        Document document = xml(written(FamilyGraph.Format.GRAPHML, Optional.of(new Tag("J-1"))));
        TreeSet<String> tags = new TreeSet<>();
        all(document, "node").forEach(node -> tags.add(data(document, node).get("tag")));
        assertEquals(new TreeSet<>(List.of("K-1", "J-1", "G-1")), tags);
    }
}
