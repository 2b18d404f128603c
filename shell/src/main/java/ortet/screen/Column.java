package ortet.screen;

/**
 * One column of a sheet.
 *
 * @param name the name in CSV and JSON, lower case with underscores, with its unit: {@code stem_mm}
 * @param heading what people read above it
 * @param unit the unit shown with the heading, empty for none
 * @param kind what its cells are
 * @param decimals how many decimals people see of a number
 * @param audience who gets it
 * @param beneath whether in a table it stands in a line of its own under its row, from the second column on
 */
public record Column(
        String name, String heading, String unit, Kind kind, int decimals, Audience audience, boolean beneath) {
    /** What the cells of a column are; numbers stand right. */
    public enum Kind {
        /** Text, left, broken at blanks where the screen is narrow. */
        TEXT,
        /** A number with a sign or a unit beside it, as text, right, never broken; for tables alone. */
        FIGURE,
        /** A whole number. */
        WHOLE,
        /** A number with decimals. */
        NUMBER,
        /** A share of 1; people read it as a percentage. */
        SHARE,
        /** A day. */
        DAY,
        /** Yes or no. */
        TRUTH
    }

    /** Who gets a column. */
    public enum Audience {
        /** Every format. */
        EVERYBODY,
        /** The table alone: what the other formats have in columns of their own. */
        PEOPLE,
        /** CSV and JSON alone. */
        PROGRAMS
    }

    /** Refuse a name that is not lower case with underscores. */
    public Column {
        if (!name.matches("[a-z][a-z0-9_]*")) {
            throw new IllegalArgumentException("column name \"" + name + "\"");
        }
        if (decimals < 0 || decimals > 12) {
            throw new IllegalArgumentException("column " + name + " with " + decimals + " decimals");
        }
    }

    /** Return a column of text. */
    public static Column text(String name, String heading) {
        return new Column(name, heading, "", Kind.TEXT, 0, Audience.EVERYBODY, false);
    }

    /** Return a column of numbers with a sign or a unit beside them, for tables alone. */
    public static Column figure(String name, String heading) {
        return new Column(name, heading, "", Kind.FIGURE, 0, Audience.PEOPLE, false);
    }

    /** Return a column of whole numbers. */
    public static Column whole(String name, String heading) {
        return new Column(name, heading, "", Kind.WHOLE, 0, Audience.EVERYBODY, false);
    }

    /** Return a column of numbers that people see with so many decimals. */
    public static Column number(String name, String heading, int decimals) {
        return new Column(name, heading, "", Kind.NUMBER, decimals, Audience.EVERYBODY, false);
    }

    /** Return a column of shares of 1, which people see as percentages with so many decimals. */
    public static Column share(String name, String heading, int decimals) {
        return new Column(name, heading, "%", Kind.SHARE, decimals, Audience.EVERYBODY, false);
    }

    /** Return a column of days. */
    public static Column day(String name, String heading) {
        return new Column(name, heading, "", Kind.DAY, 0, Audience.EVERYBODY, false);
    }

    /** Return a column of yes and no. */
    public static Column truth(String name, String heading) {
        return new Column(name, heading, "", Kind.TRUTH, 0, Audience.EVERYBODY, false);
    }

    /** Return the same column with a unit in its heading. */
    public Column in(String newUnit) {
        return new Column(name, heading, newUnit, kind, decimals, audience, beneath);
    }

    /** Return the same column for tables alone. */
    public Column forPeople() {
        return new Column(name, heading, unit, kind, decimals, Audience.PEOPLE, beneath);
    }

    /** Return the same column for CSV and JSON alone. */
    public Column forPrograms() {
        return new Column(name, heading, unit, kind, decimals, Audience.PROGRAMS, beneath);
    }

    /** Return the same column, for tables alone, in a line of its own under each row; its heading is not shown. */
    public Column underEachRow() {
        return new Column(name, heading, unit, kind, decimals, Audience.PEOPLE, true);
    }

    boolean alignsRight() {
        return kind == Kind.FIGURE || kind == Kind.WHOLE || kind == Kind.NUMBER || kind == Kind.SHARE;
    }

    String headingWithUnit() {
        return Text.printable(unit.isEmpty() ? heading : heading + " (" + unit + ")");
    }
}
