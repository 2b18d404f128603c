package ortet.book.mapping;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** The words that nurseries write at the head of their columns, and in them, with what they mean in a mapping. */
final class HeaderWords {
    /** A field with the heads that may stand for it, the likeliest first. */
    record Clue(String field, List<String> heads) {}

    private static final int WHOLE = 10;
    private static final int PART = 4;

    private static final List<Clue> COMMON = List.of(
            clue("by", "by|who|done by|set by|seen by|worker|initials|operator|hand|propagator|noted by"),
            clue("note", "notes|note|remarks|remark|comments|comment|observations|details"));

    private static final List<Clue> PLANT = List.of(
            clue(
                    "tag",
                    "tag|tag no|tag number|label|label no|plant no|plant number|tree no|tree number|plant id|tree id|no|nr"
                            + "|number|id|code|ref|tree|plant|tray|tray no|batch|batch no|accession"),
            clue("cultivar", "cultivar|variety|plant name|name|species|botanical name|taxon|what|description|plant"),
            clue("epithet", "epithet|cv"),
            clue(
                    "mother",
                    "mother|mother plant|mother no|mum|parent|scion seed parent|from plant|source plant|stock plant|layer of"
                            + "|taken from|off|donor|cuttings of|cuttings from|layered from|mothers|from"),
            clue("scion", "scion|scion from|scion plant"),
            clue("rootstock", "rootstock|understock|root stock|stock"),
            clue("other parent", "rootstock pollen parent|second parent|other parent"),
            clue("seed parent", "seed parent|seed from|female"),
            clue("pollen parent", "pollen parent|pollen|pollen from|father|male"),
            clue("source", "drawn from|from tray|out of tray|out of"),
            clue(
                    "method",
                    "method|how|how raised|raised as|raised|propagation|propagated by|prop method|raised by|means|type|kind|origin"),
            clue(
                    "begun day",
                    "date set|set on|set|date struck|struck|struck on|date sown|sown|date grafted|grafted|date worked|worked"
                            + "|begun|started|start|date bought|bought|date acquired|acquired|received|arrived|date|year"),
            clue(
                    "severed day",
                    "date severed|severed|severed on|date off|cut off|date cut|separated|detached|date detached|taken off"),
            clue("severed roots", "roots|root grade|roots at severing|rooting"),
            clue("outcome", "result|outcome|status|state|fate|now|what became of it|success"),
            clue(
                    "outcome day",
                    "result on|date of result|result date|outcome date|status date|outcome on|since|lifted|date lifted"),
            clue("outcome cause", "cause|why|reason|cause of death"),
            clue("taken count", "rooted|number rooted|no rooted|taken|took|count rooted"),
            clue("failed count", "dead|failed|died|number dead|no dead|not rooted"),
            clue("count", "how many|count|quantity|qty|number struck|no struck|number of|pieces|units|number"),
            clue("stem", "stem|stem mm|diameter|stem diameter|dia|caliper|thickness|stem cm"),
            clue("ring", "ring|ring mm|ring width|girdle|girdle width"),
            clue("wound", "wound|cut"),
            clue("hormone", "hormone|rooting hormone|auxin|treatment|powder"),
            clue("strength", "iba ppm|ppm|strength|concentration|conc|iba|hormone strength|iba"),
            clue("medium", "medium|substrate|moss|mix"),
            clue("wrap", "wrap|wrapped in|wrapping|cover|foil"),
            clue("wood", "wood|cutting type|kind of cutting|wood type"),
            clue("heat", "heat|bottom heat|heat c"),
            clue("place", "place|location|house|bench|bed|where|where now|site|bay|stands"),
            clue("container", "container|pot|pot size|in"),
            clue("supplier", "supplier|bought from|from|nursery of origin"),
            clue("potted day", "potted|potted on|date potted|potting date|pot date|potted up"),
            clue("potted container", "into|potted into|new pot|pot size"),
            clue("sold day", "date sold|sold|sold on|sale date"),
            clue("sold customer", "customer|sold to|buyer|client"),
            clue("sold price", "price|net|sold for|sale price"),
            clue("lost day", "date lost|lost|died on|date died|death"),
            clue("measured stem", "stem now|present stem"),
            clue("height", "height|height cm|height mm|tall"));

    private static final String TAGS_OF_LISTS =
            "tags|tag|tag no|label|plant no|plant|plants|tree|which|what|no|number|id|code|tray|batch|ref";
    private static final String DAYS_OF_LISTS = "date|day|when|on|date done";

    private static final Map<String, List<Clue>> LISTS = lists();

    private static Map<String, List<Clue>> lists() {
        Map<String, List<Clue>> lists = new LinkedHashMap<>();
        lists.put(
                "potted",
                list(
                        clue("container", "container|pot|pot size|into|new pot|size|to|potted into"),
                        clue("medium", "medium|mix|soil|substrate"),
                        clue("place", "place|bench|house|location")));
        lists.put("moved", list(clue("place", "place|to|new place|moved to|bench|house|bed|location|where")));
        lists.put(
                "sold",
                list(
                        clue("customer", "customer|to|buyer|sold to|client|for"),
                        clue("price", "price|net|amount|each|unit price|price each|price net|sold for"),
                        clue("count", "count|quantity|qty|how many|pieces|units"),
                        clue("invoice", "invoice|invoice no|paper|docket|delivery note|doc|bill"),
                        clue("passport", "passport|plant passport")));
        lists.put(
                "reserved",
                list(
                        clue("customer", "customer|for|reserved for|client"),
                        clue("until", "until|till|hold until|to"),
                        clue("price", "price|at|net|amount|each"),
                        clue("count", "count|quantity|qty|how many")));
        lists.put(
                "lost",
                list(
                        clue("count", "count|quantity|qty|how many|number lost|units"),
                        clue("cause", "cause|why|reason|of what")));
        lists.put(
                "checked",
                list(
                        clue("findings", "findings|found|seen|state|condition"),
                        clue("findings nothing", "nothing|none"),
                        clue("findings callus", "callus|callused"),
                        clue("findings roots showing", "roots|roots showing|rooted"),
                        clue("findings root ball full", "full|root ball full"),
                        clue("findings dry", "dry"),
                        clue("findings dead", "dead")));
        lists.put(
                "measured",
                list(
                        clue("stem", "stem|stem mm|diameter|dia|caliper|stem cm|thickness"),
                        clue("height", "height|height cm|height mm|tall")));
        lists.put(
                "outcome",
                list(
                        clue("outcome", "result|outcome|what|fate|what became of it|status"),
                        clue("roots", "roots|root grade"),
                        clue("cause", "cause|why|reason"),
                        clue("count", "count|quantity|qty|how many")));
        lists.put(
                "severed",
                list(
                        clue("roots", "roots|root grade"),
                        clue("place", "place|bench"),
                        clue("container", "pot|container|into")));
        lists.put(
                "retagged",
                list(
                        clue("new tag", "new|new tag|new label|new no|new number"),
                        clue("tags", "old|old tag|old label|old no|old number")));
        lists.put(
                "drawn",
                list(
                        clue("source", "source|out of|from|from tray|drawn from|tray|batch|of"),
                        clue("container", "pot|container|into|pot size"),
                        clue("place", "place|bench|house")));
        lists.put("seen", list(clue("place", "place|bench|house|location|where")));
        lists.put("entry", list(clue("kind", "what|job|action|activity|event|work|did|what was done|task")));
        return lists;
    }

    private static List<Clue> list(Clue... own) {
        List<Clue> all = new ArrayList<>(List.of(own));
        all.add(clue("tags", TAGS_OF_LISTS));
        all.add(clue("day", DAYS_OF_LISTS));
        all.addAll(COMMON);
        return List.copyOf(all);
    }

    /** Words in the names of files that tell what a row is. */
    private static final Map<String, String> FILES = files();

    private static Map<String, String> files() {
        Map<String, String> files = new LinkedHashMap<>();
        put(files, "potted", "potting|pottings|potted|pots|repot|repotting");
        put(files, "moved", "move|moves|moved|moving");
        put(files, "sold", "sale|sales|sold|invoices");
        put(files, "reserved", "reserved|reservations|orders|held for");
        put(files, "lost", "loss|losses|lost|deaths|died|dead");
        put(files, "checked", "check|checks|checked|inspections");
        put(files, "measured", "stem|stems|measured|measure|measurements|sizes");
        put(files, "outcome", "outcome|outcomes|result|results");
        put(files, "severed", "severed|severings|severing");
        put(files, "retagged", "label|labels|retagged|relabelled|tags");
        put(files, "drawn", "drawn|draws|pricked");
        put(files, "seen", "seen|stocktake|stocktaking");
        put(files, "entry", "diary|log|journal|work|jobs|day book|daybook");
        put(
                files,
                "plant",
                "trees|tree|plants|plant|stock|inventory|layers|layer|cuttings|grafts|graft|seed|seeds|seedlings|trays|mothers|list"
                        + "|ledger|bought");
        return files;
    }

    private static final Map<String, String> METHODS = words(
            "layer=a/l|al|a.l.|air layer|airlayer|air-layer|air layered|air layering|layered|layering|marcot|marcott|marcottage",
            "cuttings=c|cutt|cutt.|ctg|struck|softwood cutting|hardwood cutting|stek",
            "graft=g|gr|gr.|grafted|cleft|cleft graft|side veneer|veneer|veneer graft|whip|whip and tongue|bud|budded|saddle",
            "seed=s|sown|from seed|cross|sdlg|seed tray",
            "division=d|div|divided|split",
            "sport=sport|mutation",
            "drawn=pricked out|drawn",
            "acquired=bought|bought in|bought-in|purchase|purchased|collected|stock|gift|acq|yamadori|imported");

    private static final Map<String, String> OUTCOMES = words(
            "taken=t|y|yes|ok|took|taken|rooted|held|came up|success|succeeded|good|severed|union held|germinated",
            "failed=n|no|f|failed|fail|not taken|no take",
            "failed no-roots=no roots|not rooted",
            "dead=d|dead|died|gone|x|†",
            "growing=alive|in stock|growing|here|present|on bench",
            "pending=still on|pending|waiting|on mother|not yet|open",
            "sold=sold",
            "lost=lost",
            "lost stolen=stolen",
            "withdrawn=withdrawn|cut back");

    private static final Map<String, String> KINDS = words(
            "acquired=bought|bought in|arrived|received|purchased",
            "layer-set=layered|layer set|air layered|air layer|set layer|set",
            "cuttings-struck=struck|cuttings|cuttings struck|cuttings taken",
            "graft-worked=grafted|worked|graft",
            "seed-sown=sown|sowed|seed sown",
            "checked=looked|checked|inspected|opened",
            "severed=cut off|severed|taken off|separated|cut",
            "taken=rooted|took",
            "failed=no good|failed|no take",
            "potted=potted|potted up|potted on|bigger pot|repotted|into pot",
            "planted-out=planted out|planted|into ground",
            "lifted=lifted|dug up|dug",
            "moved=moved|shifted",
            "measured=measured",
            "seen=seen|counted present",
            "sold=sold",
            "lost=died|dead|lost",
            "retagged=new label|relabelled|new tag|retagged",
            "cut-back=cut back|pruned",
            "left-long=left long",
            "noted=note|noted");

    private static final Map<String, String> CAUSES = words(
            "pest=slugs|slug|mice|mouse|vine weevil|weevil|aphids|rabbits",
            "dried=dry|dried out|drought|dried up",
            "rotted=rot|rotten|root rot",
            "damped-off=damped off|damping off",
            "frost=frozen|cold|winter|hard winter",
            "wind=storm|gale",
            "disease=blight|mildew|canker",
            "broken=snapped|knocked",
            "unknown=?|unknown|not known");

    private HeaderWords() {}

    private static Clue clue(String field, String heads) {
        return new Clue(field, List.of(heads.split("\\|")));
    }

    private static void put(Map<String, String> files, String shape, String words) {
        for (String word : words.split("\\|")) {
            files.putIfAbsent(word, shape);
        }
    }

    private static Map<String, String> words(String... lines) {
        Map<String, String> words = new LinkedHashMap<>();
        for (String line : lines) {
            int equals = line.indexOf('=');
            for (String word : line.substring(equals + 1).split("\\|")) {
                words.putIfAbsent(word, line.substring(0, equals));
            }
        }
        return words;
    }

    /** Return the shapes that are looked for. */
    static List<String> shapes() {
        List<String> shapes = new ArrayList<>(List.of("plant"));
        shapes.addAll(LISTS.keySet());
        return shapes;
    }

    /** Return the clues for a shape. */
    static List<Clue> clues(String shape) {
        if (!shape.equals("plant")) {
            return LISTS.get(shape);
        }
        List<Clue> all = new ArrayList<>(PLANT);
        all.addAll(COMMON);
        return all;
    }

    /** Return which shape the name of a file speaks for. */
    static Optional<String> shapeOfFile(String file) {
        String name = bare(file.replaceFirst("\\.[^.]*$", "").replaceAll("\\d+", " "));
        for (Map.Entry<String, String> word : FILES.entrySet()) {
            if (contains(name, word.getKey())) {
                return Optional.of(word.getValue());
            }
        }
        return Optional.empty();
    }

    /** Return how well a column's head fits a clue: 0 not at all. */
    static int fit(String head, Clue clue) {
        String bare = bare(head);
        int best = 0;
        for (int at = 0; at < clue.heads().size(); at++) {
            String wanted = clue.heads().get(at);
            int rank = clue.heads().size() - at;
            if (bare.equals(wanted)) {
                best = Math.max(best, 100 * WHOLE + rank);
            } else if (wanted.length() > 1 && contains(bare, wanted)) {
                best = Math.max(best, 100 * PART + 10 * wanted.length() + rank);
            }
        }
        return best;
    }

    private static boolean contains(String text, String words) {
        return (" " + text + " ").contains(" " + words + " ");
    }

    /** Return a head in lower case, with blanks for all marks and without its unit and its number. */
    static String bare(String head) {
        return Folded.of(head.replaceAll("\\(\\d+\\)\\s*$", "").replaceAll("[^\\p{L}\\p{N}]+", " "))
                .replaceAll("(?<= )(mm|cm|inch|eur|gbp|usd|kg)$", "")
                .strip();
    }

    /** Return the unit that a head names. */
    static Optional<String> unit(String head, List<String> units) {
        List<String> words = Arrays.asList(head.toLowerCase(Locale.ROOT).split("[^\\p{L}%€£]+"));
        return units.stream().filter(words::contains).findFirst();
    }

    /** Return what a word in a column stands for, in the words of the field. */
    static Optional<String> meaning(Meaning meaning, String word) {
        String folded = Folded.of(word);
        Map<String, String> words = switch (meaning.sort()) {
            case METHOD -> METHODS;
            case OUTCOME -> OUTCOMES;
            case KIND -> KINDS;
            case CHOICE -> meaning.field().equals(Meaning.CAUSE) ? CAUSES : Map.of();
            default -> Map.of();
        };
        return Optional.ofNullable(words.get(folded));
    }
}
