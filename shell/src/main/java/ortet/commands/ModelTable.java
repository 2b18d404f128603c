package ortet.commands;

import java.util.ArrayList;
import java.util.List;
import ortet.figures.ModelData;

/** Counts in a table, one for each row, with whatever may explain them, made into what a model is fitted to. */
final class ModelTable {
    private final FigureFile file;
    private final List<FigureFile.Row> rows;

    ModelTable(FigureFile file) {
        this.file = file;
        this.rows = file.rows();
    }

    /** Return what a model is fitted to. */
    ModelData model(
            String successes,
            String trials,
            List<String> random,
            List<String> fixed,
            List<String> factors,
            boolean nested) {
        file.column("--successes", successes);
        file.column("--trials", trials);
        long[] r = new long[rows.size()];
        long[] n = new long[rows.size()];
        for (int at = 0; at < r.length; at++) {
            n[at] = rows.get(at).whole(trials);
            r[at] = rows.get(at).whole(successes);
            if (r[at] > n[at]) {
                throw rows.get(at).bad(successes, "more successes than trials: " + r[at] + " of " + n[at]);
            }
        }
        ModelData data = ModelData.of(r, n);
        for (String term : fixed) {
            for (Part part : parts(term, factors)) {
                data = data.withColumn(part.name(), part.values());
            }
        }
        for (String factor : factors) {
            if (fixed.stream().noneMatch(term -> List.of(term.split(":", -1)).contains(factor))) {
                data = data.withFactor(factor, labels("--factor", factor));
            }
        }
        String outer = "";
        for (String group : random) {
            data = nested && !outer.isEmpty()
                    ? data.withGroupsWithin(group, outer, labels("--random", group))
                    : data.withGroups(group, labels("--random", group));
            outer = group;
        }
        return data;
    }

    /** A column of a model. */
    private record Part(String name, double[] values) {
        Part times(Part other) {
            double[] product = new double[values.length];
            for (int at = 0; at < product.length; at++) {
                product[at] = values[at] * other.values[at];
            }
            return new Part(name + ":" + other.name, product);
        }
    }

    /** Return the columns of a term: one for numbers, one for each level but the first for words, products for a:b. */
    private List<Part> parts(String term, List<String> factors) {
        if (file.has(term) || !term.contains(":")) {
            return single(term, factors);
        }
        List<Part> all = List.of();
        for (String name : term.split(":", -1)) {
            List<Part> own = single(name, factors);
            List<Part> products = new ArrayList<>();
            for (Part before : all) {
                own.forEach(part -> products.add(before.times(part)));
            }
            all = all.isEmpty() ? own : products;
        }
        return all;
    }

    private List<Part> single(String name, List<String> factors) {
        file.column("--fixed", name);
        double[] numbers = new double[rows.size()];
        boolean isNumber = !factors.contains(name);
        for (int at = 0; at < numbers.length && isNumber; at++) {
            String text = rows.get(at).text(name);
            try {
                numbers[at] = Double.parseDouble(text);
                isNumber = Double.isFinite(numbers[at]) && text.matches("[-+.0-9eE]+");
            } catch (NumberFormatException word) {
                isNumber = false;
            }
        }
        if (isNumber) {
            return List.of(new Part(name, numbers));
        }
        List<String> labels = labels("--fixed", name);
        List<String> levels = labels.stream().distinct().toList();
        List<Part> parts = new ArrayList<>();
        for (String level : levels.subList(Math.min(1, levels.size()), levels.size())) {
            parts.add(new Part(
                    name + " " + level,
                    labels.stream()
                            .mapToDouble(label -> label.equals(level) ? 1 : 0)
                            .toArray()));
        }
        return parts;
    }

    private List<String> labels(String option, String name) {
        file.column(option, name);
        List<String> labels = new ArrayList<>(rows.size());
        for (FigureFile.Row row : rows) {
            String label = row.text(name);
            if (label.isEmpty()) {
                throw row.bad(name, "an empty cell; expected the name of a group");
            }
            labels.add(label);
        }
        return labels;
    }
}
