package ortet.choice;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Every way to raise every cultivar, with what it uses and what it brings, by the year of setting. */
final class Products {
    /**
     * One way to raise one cultivar.
     *
     * @param set by year of setting, what each unit set needs
     * @param established by year, what each tree that establishes needs
     * @param outlets where the trees go
     * @param years after how many years
     * @param shares of those established
     */
    record Product(
            Raising raising,
            Method method,
            Column[] set,
            Column[] established,
            int[] outlets,
            int[] years,
            double[] shares) {
        double trees() {
            double sum = 0;
            for (double share : shares) {
                sum += share;
            }
            return sum;
        }
    }

    private static final int[] NONE = {};

    final List<Product> all = new ArrayList<>();
    private final Map<String, int[][]> byCultivar = new HashMap<>();
    final List<Column[]> upkeep = new ArrayList<>();
    /** By deed and year: what going to a mother for it takes. */
    final Column[][] setUp;

    private final Map<Needs, Integer> upkeepAt = new HashMap<>();
    private final Layout layout;

    Products(Layout layout) {
        this.layout = layout;
        for (Ways ways : layout.question.ways()) {
            int bands = ways.layers().size();
            int[][] numbers = new int[bands + 1][];
            Map<List<Object>, Integer> seen = new HashMap<>();
            for (int band = 0; band < bands; band++) {
                numbers[band] = numbers(ways.cultivar(), ways.layers().get(band), Method.LAYER, seen);
            }
            numbers[bands] = numbers(ways.cultivar(), ways.cuttings(), Method.CUTTING, seen);
            byCultivar.put(ways.cultivar(), numbers);
        }
        for (Mother mother : layout.question.mothers()) {
            upkeepOf(mother.whileLong());
            upkeepOf(mother.whileShort());
        }
        this.setUp = new Column[Deed.values().length][layout.years];
        for (Deed deed : Deed.values()) {
            for (int year = 0; year < layout.years; year++) {
                Column column = new Column();
                for (Needs needs : layout.question.setUp().of(deed)) {
                    column.add(layout, needs, year, 1);
                }
                setUp[deed.ordinal()][year] = column;
            }
        }
    }

    /** Return the products for a layer in a band. */
    int[] layers(String cultivar, int band) {
        int[][] numbers = byCultivar.get(cultivar);
        return numbers == null || band >= numbers.length - 1 ? NONE : numbers[band];
    }

    /** Return the products for a cutting. */
    int[] cuttings(String cultivar) {
        int[][] numbers = byCultivar.get(cultivar);
        return numbers == null ? NONE : numbers[numbers.length - 1];
    }

    int upkeepOf(Needs needs) {
        return upkeepAt.computeIfAbsent(needs, fresh -> {
            Column[] columns = new Column[layout.years];
            for (int year = 0; year < layout.years; year++) {
                columns[year] = new Column();
                columns[year].add(layout, needs, year, 1);
            }
            upkeep.add(columns);
            return upkeep.size() - 1;
        });
    }

    private int[] numbers(String cultivar, List<Raising> raisings, Method method, Map<List<Object>, Integer> seen) {
        int[] numbers = new int[raisings.size()];
        for (int i = 0; i < numbers.length; i++) {
            Raising raising = raisings.get(i);
            numbers[i] = seen.computeIfAbsent(List.of(raising, method), fresh -> {
                all.add(product(cultivar, raising, method));
                return all.size() - 1;
            });
        }
        return numbers;
    }

    private Product product(String cultivar, Raising raising, Method method) {
        Column[] set = new Column[layout.years];
        Column[] established = new Column[layout.years];
        for (int year = 0; year < layout.years; year++) {
            set[year] = new Column();
            set[year].add(layout, raising.perSet(), year, 1);
            set[year].add(layout.licence(cultivar, year), 1);
            established[year] = new Column();
            for (int after = 0; after < raising.perEstablished().size(); after++) {
                established[year].add(layout, raising.perEstablished().get(after), year + after, 1);
            }
        }
        List<Grade> sold = raising.grades().stream()
                .filter(grade -> grade.share() > 0 && layout.outlet(cultivar, grade.sizeClass()) >= 0)
                .toList();
        return new Product(
                raising,
                method,
                set,
                established,
                sold.stream()
                        .mapToInt(grade -> layout.outlet(cultivar, grade.sizeClass()))
                        .toArray(),
                sold.stream().mapToInt(Grade::years).toArray(),
                sold.stream().mapToDouble(Grade::share).toArray());
    }
}
