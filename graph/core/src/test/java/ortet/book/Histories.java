package ortet.book;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.Predicate;

/** Makes up random histories in the words of a {@link Diary}: most lines sensible, some that no book should take. */
public final class Histories {
    private static final List<String> BEGINNING = List.of(
            "2015-01-01 acquired K-1; cultivar=Acer palmatum 'Deshojo'",
            "2015-01-01 acquired K-2",
            "2015-01-01 acquired R-1; count=20");

    private Histories() {}

    /**
     * Make up a history.
     *
     * @param seed the same for the same history
     * @param lines how many lines to make up
     * @param writer writes one line as a proposal of its own, and tells whether it was taken
     * @return how many lines were taken
     */
    public static int write(int seed, int lines, Predicate<String> writer) {
        Random random = new Random(seed);
        List<String> names = new ArrayList<>();
        int taken = 0;
        for (String beginning : BEGINNING) {
            writer.test(beginning);
        }
        for (int at = 0; at < lines; at++) {
            String day = String.format(
                    "20%02d-%02d-%02d", 16 + random.nextInt(4), 1 + random.nextInt(12), 1 + random.nextInt(28));
            if (random.nextInt(12) == 0) {
                day = day.substring(0, random.nextBoolean() ? 7 : 4);
            }
            String name = "e" + at;
            String plant = pick(random, "K-1", "K-2", "J-1", "J-2", "J-3", "C-1", "C-2", "D-1", "G-1", "M-1");
            String tray = pick(random, "T-1", "T-2", "T-3", "R-1", "S-1", "GB-1");
            String any = random.nextBoolean() ? plant : tray;
            String line = switch (random.nextInt(33)) {
                case 0 -> "layer-set J-1 J-2; mother=" + plant;
                case 1 -> "layer-set J-3; mother=" + plant;
                case 2 -> "cuttings-struck T-1; mothers=" + plant + "; count=" + (1 + random.nextInt(9));
                case 3 -> "severed " + pick(random, "J-1", "J-2", "J-3");
                case 4 -> "failed " + any + (random.nextBoolean() ? "" : "; count=2");
                case 5 -> "taken " + any;
                case 6 -> "drawn C-1; source=" + tray;
                case 7 -> "drawn C-2; source=" + tray;
                case 8 -> "split T-2; source=" + tray + "; count=" + (1 + random.nextInt(4));
                case 9 -> "merged T-3; sources=T-1 T-2";
                case 10 -> "potted " + any + "; container=1 L";
                case 11 -> "moved " + any + "; place=Yard";
                case 12 -> "sold " + any;
                case 13 -> "lost " + any;
                case 14 -> "culled " + any + "; cull=surplus";
                case 15 -> "counted " + tray + "; count=" + (1 + random.nextInt(9));
                case 16 -> "graft-worked G-1; scion=" + plant + "; stock=R-1";
                case 17 -> "graft-worked GB-1; scion=" + plant + "; stock=R-1; count=5";
                case 18 -> "retagged " + plant + "; new_tag=M-1";
                case 19 -> "seed-sown S-1; grams=3; seed_parent=" + plant;
                case 20 -> "closed " + any + "; rest=" + pick(random, "failed", "still-on", "not-seen");
                case 21 -> "divided D-1; mother=" + plant;
                case 22 -> names.isEmpty() ? "" : "crossed-out; target=" + any(random, names) + "; reason=no";
                case 23 ->
                    names.isEmpty() ? "" : "corrected; target=" + any(random, names) + "; field=day; value=2018-06-01";
                case 24 ->
                    names.isEmpty()
                            ? ""
                            : "corrected " + plant + "; target=" + any(random, names) + "; field=tags; value="
                                    + pick(random, "J-9", "K-2", "C-1", "J-1");
                case 25 ->
                    names.isEmpty() ? "" : "corrected; target=" + any(random, names) + "; field=mother; value=" + plant;
                case 26 -> "layer-set J-3; mother=" + plant + "; below_union=yes";
                case 27 -> "cuttings-struck T-2; mothers=" + plant + "; count=4; below_union=yes";
                case 28 ->
                    "redetermined " + any + "; cultivar=Acer palmatum '" + pick(random, "Katsura", "Seiryu") + "'";
                case 29 -> "found-untagged D-1; candidates=" + plant + " " + pick(random, "K-1", "K-2", "J-1");
                case 30 -> "graft-worked G-1; scion=" + plant + "; stock=R-1";
                case 31 ->
                    names.isEmpty()
                            ? ""
                            : "corrected; target=" + any(random, names) + "; field=stock; value="
                                    + pick(random, "R-1", "K-2", "T-1");
                default -> "checked " + any + "; findings=callus";
            };
            if (line.isEmpty()) {
                continue;
            }
            if (writer.test(name + ": " + day + " " + line)) {
                taken++;
                if (!line.startsWith("cro") && !line.startsWith("cor")) {
                    names.add(name);
                }
            }
        }
        return taken;
    }

    private static String pick(Random random, String... words) {
        return words[random.nextInt(words.length)];
    }

    private static String any(Random random, List<String> names) {
        return names.get(random.nextInt(names.size()));
    }
}
