package ortet.choice;

import java.util.Arrays;

/** Money, and what is used of rows, for one unit of something; rows may come more than once. */
final class Column {
    static final Column NOTHING = new Column();

    double money;
    int[] rows = new int[8];
    double[] amounts = new double[8];
    int size;

    /** Empty it. */
    void clear() {
        money = 0;
        size = 0;
    }

    void add(int row, double amount) {
        if (amount == 0 || row < 0) {
            return;
        }
        if (size == rows.length) {
            rows = Arrays.copyOf(rows, size * 2);
            amounts = Arrays.copyOf(amounts, size * 2);
        }
        rows[size] = row;
        amounts[size++] = amount;
    }

    /** Add another, so often. */
    void add(Column other, double often) {
        money += often * other.money;
        for (int i = 0; i < other.size; i++) {
            add(other.rows[i], often * other.amounts[i]);
        }
    }

    /** Return this with each row but once, and only those that have a say; rows beyond the list, which are totals, have one. */
    Column only(boolean[] said) {
        Column other = new Column();
        other.money = money;
        for (int i = 0; i < size; i++) {
            int row = rows[i];
            if (row < said.length && !said[row]) {
                continue;
            }
            int at = 0;
            while (at < other.size && other.rows[at] != row) {
                at++;
            }
            if (at < other.size) {
                other.amounts[at] += amounts[i];
            } else {
                other.add(row, amounts[i]);
            }
        }
        return other;
    }

    /** Add what a mother or unit needs in a year, some so often. */
    void add(Layout layout, Needs needs, int year, double often) {
        Costs costs = layout.question.costs();
        double discount = layout.discount(year);
        money -= often * needs.material() * discount;
        for (int season = 0; season < needs.hours().size(); season++) {
            double hours = needs.hours().get(season) * often;
            money -= hours * costs.hour() * discount;
            add(layout.hours(year, season), hours);
        }
        for (int season = 0; season < needs.areaM2().size(); season++) {
            double area = needs.areaM2().get(season) * often;
            money -= area * costs.m2Year() / layout.seasons * discount;
            add(layout.room(needs.place(), year, season), area);
        }
    }

    /** Return the money less what is used at the prices of the rows. */
    double at(double[] prices) {
        double worth = money;
        for (int i = 0; i < size; i++) {
            worth -= prices[rows[i]] * amounts[i];
        }
        return worth;
    }
}
