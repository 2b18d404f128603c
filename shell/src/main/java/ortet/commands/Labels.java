package ortet.commands;

import java.util.Map;

/** Puts the value of a column into words, with its unit: {@code stem 12 mm}. */
final class Labels {
    private static final Map<String, String> UNITS =
            Map.of("_mm", " mm", "_c", " °C", "_years", " years", "_m2", " m²");

    private Labels() {}

    static String of(String column, String value) {
        if (column.equals("note")) {
            return "“" + value + "”";
        }
        if (column.equals("set_unrecorded")) {
            return value.equals("yes") ? "not recorded when it was done" : "recorded when it was done";
        }
        if (column.equals("grams")) {
            return "weight " + value + " g";
        }
        if (column.equals("units_per_m2")) {
            return value + " units on a m²";
        }
        for (Map.Entry<String, String> unit : UNITS.entrySet()) {
            if (column.endsWith(unit.getKey())) {
                String name =
                        column.substring(0, column.length() - unit.getKey().length());
                return name.replace('_', ' ') + " " + value + unit.getValue();
            }
        }
        return column.replace('_', ' ') + " " + value;
    }
}
