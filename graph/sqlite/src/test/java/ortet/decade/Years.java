package ortet.decade;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import ortet.decade.Accounts.Line;
import ortet.decade.Accounts.Units;
import ortet.decade.Doing.What;
import ortet.decade.Records.Tree;
import ortet.decade.Truth.Fate;

/** Lets the years of one nursery go by under somebody who decides, writes down what happens, and keeps the accounts. */
final class Years {
    private static final double SET_ASIDE = 102.0 / 365;
    private static final double UNTIL_SOLD = 305.0 / 365;
    private static final int KEPT = 2;
    private static final List<String> STEMS = List.of("8", "13", "20");
    private static final List<String> BANDS = List.of("6-10", "10-16", "16-25");

    private final Truth truth;
    private final Records records;
    private final Notebook notebook;
    private final int[] cropped;
    private final List<String> day = new ArrayList<>();
    private final List<List<String>> unwritten = new ArrayList<>();
    private Accounts accounts = new Accounts();

    Years(Truth truth, Notebook notebook) {
        this.truth = truth;
        this.records = new Records(truth);
        this.notebook = notebook;
        this.cropped = new int[truth.mothers()];
        for (int mother = 0; mother < truth.mothers(); mother++) {
            unwritten.add(new ArrayList<>());
        }
    }

    Records records() {
        return records;
    }

    Accounts accounts() {
        return accounts;
    }

    // ---- the past ----

    /** Write down what there is, and let the past go by. */
    void past() {
        String first = Truth.PAST - 1 + "-01-10 ";
        day.add(first + "place-listed; place=House");
        day.add(first + "place-listed; place=Field");
        day.add(first + "cost-listed; per=hour; amount=" + money(truth.means().hour()));
        day.add(first + "cost-listed; task=layer-set; hours=" + truth.means().setHours());
        day.add(first + "cost-listed; task=severed; hours=" + Cost.SEVERING_HOURS);
        day.add(first + "cost-listed; task=potted; hours=" + Cost.POTTING_HOURS);
        day.add(first + "cost-listed; task=graded; hours=" + Cost.GRADING_HOURS);
        day.add(first + "cost-listed; task=sold; hours=" + Cost.SELLING_HOURS);
        day.add(first + "cost-listed; task=cut-back; hours=" + Cost.CUTTING_BACK_HOURS);
        day.add(first + "cost-listed; material=moss; amount="
                + money(truth.means().moss()));
        day.add(first + "cost-listed; material=2 L; amount=" + money(Cost.FIRST_POT));
        day.add(first + "cost-listed; material=5 L; amount=" + money(Cost.SECOND_POT));
        day.add(first + "cost-listed; per=m2-year; amount="
                + money(truth.means().m2Year()));
        day.add(first + "cost-listed; container=2 L; units_per_m2=" + number(1 / Cost.square(0)));
        day.add(first + "cost-listed; container=5 L; units_per_m2=" + number(1 / Cost.square(2)));
        day.add(first + "cost-listed; place=Field; units_per_m2=" + number(1 / Cost.MOTHER_M2));
        for (int mother = 0; mother < truth.mothers(); mother++) {
            String tag = Truth.tag(mother);
            day.add(first + "acquired " + tag + "; cultivar=" + Truth.name(truth.cultivar(mother)) + "; place=Field");
            day.add(first + "kept-as-stock " + tag);
            day.add(first + "graded " + tag + "; size=specimen " + (mother + 1));
            day.add(first + "price-listed; size=specimen " + (mother + 1) + "; price=" + money(truth.asTree(mother)));
        }
        listPrices(Truth.PAST - 1);
        written();
        Policy habit = new AsBefore(truth.luck());
        for (int year = Truth.PAST; year < Truth.FIRST; year++) {
            go(year, habit);
        }
        accounts = new Accounts();
        accounts.count(Units.SET, records.trees.size());
    }

    private void listPrices(int year) {
        for (int cultivar = 0; cultivar < truth.cultivars(); cultivar++) {
            for (int size = 0; size < Truth.SIZES; size++) {
                if (year < Truth.PAST || truth.price(cultivar, size, year) != truth.price(cultivar, size, year - 1)) {
                    day.add(year + "-01-11 price-listed; size=" + Truth.size(size) + "; cultivar="
                            + Truth.name(cultivar) + "; price=" + money(truth.price(cultivar, size, year)));
                }
            }
        }
    }

    // ---- a year ----

    /** Let a year go by. */
    void go(int year, Policy policy) {
        records.begin(year);
        listPrices(year);
        count(year);
        written();
        List<Doing> doings = policy.decide(records);
        for (Doing doing : doings) {
            if (doing.what() == What.SOLD) {
                sellMother(doing.mother(), year + "-02-20 ");
            } else if (doing.what() == What.CUT_BACK) {
                day.add(year + "-02-20 cut-back " + Truth.tag(doing.mother()));
                hours(Cost.CUTTING_BACK_HOURS);
                cropped[doing.mother()] = year;
            }
        }
        List<Tree> severed = new ArrayList<>();
        double setting = 0;
        for (Doing doing : doings) {
            setting += doing.layers() * truth.means().setHours();
            set(year, doing, severed);
        }
        hours(setting);
        accounts.add(
                Line.MORE_HOURS,
                -Math.max(0, setting - truth.means().springHours())
                        * truth.means().hour()
                        * (Cost.MORE_HOURS - 1));
        grow(year);
        sever(year, doings, severed);
        sell(year, severed);
        room(year);
        written();
    }

    /** Let a year go by in which nothing is set any more. */
    void growOn(int year) {
        records.begin(year);
        grow(year);
        sell(year, List.of());
        room(year);
        day.clear();
    }

    /** Close the accounts: nothing stands but mothers. */
    void close() {
        accounts.count(Units.STANDING, records.trees.size());
        for (int mother = 0; mother < truth.mothers(); mother++) {
            if (!records.gone[mother]) {
                accounts.add(Line.MOTHERS_LEFT, truth.asTree(mother));
            }
        }
    }

    private void count(int year) {
        for (int mother = 0; mother < truth.mothers(); mother++) {
            int age = cropped[mother] == 0 ? year : year - cropped[mother];
            StringBuilder bands = new StringBuilder();
            for (int band = 0; band < Truth.BANDS; band++) {
                records.positions[mother][band] = truth.positions(mother, band, year, age);
                bands.append(band == 0 ? "" : " ")
                        .append(BANDS.get(band))
                        .append(':')
                        .append(records.positions[mother][band]);
            }
            boolean counts = year >= Truth.FIRST || truth.luck().share(Luck.Of.HABIT, year, mother, 9) < 1 / 3.0;
            if (!records.gone[mother] && counts) {
                day.add(year + "-02-10 measured " + Truth.tag(mother) + "; positions=" + bands);
            }
        }
    }

    private void set(int year, Doing doing, List<Tree> severed) {
        int mother = doing.mother();
        if (doing.layers() == 0) {
            return;
        }
        if (records.gone[mother]) {
            throw new IllegalStateException("layers on a mother who is gone");
        }
        List<String> failed = new ArrayList<>();
        for (int band = 0; band < Truth.BANDS; band++) {
            int count = doing.sets().get(band);
            if (count > records.positions[mother][band]) {
                throw new IllegalStateException("more layers than positions on " + Truth.tag(mother));
            }
            if (count == 0) {
                continue;
            }
            String tag = "L" + year % 100 + "-" + (mother + 1) + "abc".charAt(band) + "-";
            day.add(year + "-05-15 layer-set " + tag + "1.." + tag + count + "; mother=" + Truth.tag(mother)
                    + "; stem_mm=" + STEMS.get(band) + "; medium=moss");
            for (int number = 1; number <= count; number++) {
                Fate fate = truth.fate(mother, band, year, number);
                if (fate.taken()) {
                    severed.add(new Tree(truth.cultivar(mother), band, year, tag + number, fate));
                    records.taken[mother]++;
                    records.known[mother]++;
                } else {
                    failed.add(tag + number);
                }
            }
        }
        accounts.count(Units.SET, doing.layers());
        accounts.count(Units.FAILED, failed.size());
        accounts.add(Line.MATERIAL, -doing.layers() * truth.means().moss());
        records.lastLayered[mother] = year;
        boolean isWritten = truth.isWritten(mother, year);
        if (isWritten) {
            records.known[mother] += failed.size();
        }
        (isWritten ? writtenLater : unwritten.get(mother)).addAll(failed);
    }

    private final List<String> writtenLater = new ArrayList<>();

    /** From the turn of the year to summer: what is potted on, what dies, and what is seen alive. */
    private void grow(int year) {
        List<String> potted = new ArrayList<>();
        List<String> lost = new ArrayList<>();
        List<String> seen = new ArrayList<>();
        for (Iterator<Tree> all = records.trees.iterator(); all.hasNext(); ) {
            Tree tree = all.next();
            if (tree.set == year - 2 && tree.size < 0) {
                potted.add(tree.tag);
            }
            if (tree.set == year - 1) {
                boolean lives = tree.fate().established();
                records.established[tree.cultivar][lives ? 0 : 1]++;
                (lives ? seen : lost).add(tree.tag);
                if (!lives) {
                    bench(tree, year, 151.0 / 365);
                    all.remove();
                }
            }
        }
        hours(potted.size() * Cost.POTTING_HOURS);
        accounts.add(Line.MATERIAL, -potted.size() * Cost.SECOND_POT);
        accounts.count(Units.LOST, lost.size());
        tell(year + "-03-01 potted ", potted, "; container=5 L");
        tell(year + "-06-01 lost ", lost, "");
        tell(year + "-07-10 seen ", seen, "");
    }

    private void sever(int year, List<Doing> doings, List<Tree> severed) {
        tell(year + "-09-20 severed ", severed.stream().map(tree -> tree.tag).toList(), "; container=2 L; place=House");
        hours(severed.size() * Cost.SEVERING_HOURS);
        accounts.add(Line.MATERIAL, -severed.size() * Cost.FIRST_POT);
        severed.forEach(tree -> accounts.add(
                Line.BENCH, -Cost.square(0) * SET_ASIDE * truth.means().m2Year()));
        tell(year + "-09-21 failed ", writtenLater, "");
        writtenLater.clear();
        for (Doing doing : doings) {
            boolean crops = doing.what() == What.CROPPED || doing.what() == What.CROPPED_AND_SOLD;
            if (crops && doing.layers() > 0) {
                cropped[doing.mother()] = year;
                hours(Cost.CUTTING_BACK_HOURS);
            }
            if (doing.what() == What.CROPPED_AND_SOLD) {
                sellMother(doing.mother(), year + "-10-05 ");
            }
        }
    }

    private void sellMother(int mother, String on) {
        // with layers of which nobody knows she cannot be sold: they are looked for, and written down at last
        List<String> forgotten = unwritten.get(mother);
        tell(on + "failed ", forgotten, "");
        records.known[mother] += forgotten.size();
        forgotten.clear();
        day.add(on + "sold " + Truth.tag(mother));
        records.gone[mother] = true;
        accounts.count(Units.MOTHERS_SOLD, 1);
        accounts.add(Line.MOTHERS_SOLD, truth.asTree(mother));
        hours(Cost.SELLING_HOURS);
    }

    /** Autumn: trees are graded, culled, sold and thrown away. */
    private void sell(int year, List<Tree> severed) {
        for (int size = -1; size < Truth.SIZES; size++) {
            List<String> tags = new ArrayList<>();
            for (Iterator<Tree> all = records.trees.iterator(); all.hasNext(); ) {
                Tree tree = all.next();
                if (tree.size >= 0 || tree.fate().ready() != year || tree.fate().size() != size) {
                    continue;
                }
                tags.add(tree.tag);
                if (size < 0) {
                    records.neverFit[tree.band]++;
                    bench(tree, year, UNTIL_SOLD);
                    all.remove();
                } else {
                    records.graded[tree.band][size]++;
                    tree.size = size;
                    tree.gradedIn = year;
                }
            }
            if (size < 0) {
                accounts.count(Units.NEVER_FIT, tags.size());
                tell(year + "-10-01 culled ", tags, "; cull=quality");
            } else {
                hours(tags.size() * Cost.GRADING_HOURS);
                tell(year + "-10-01 graded ", tags, "; size=" + Truth.size(size));
            }
        }
        for (int cultivar = 0; cultivar < truth.cultivars(); cultivar++) {
            for (int size = 0; size < Truth.SIZES; size++) {
                sell(year, cultivar, size);
            }
        }
        List<String> thrown = new ArrayList<>();
        for (Iterator<Tree> all = records.trees.iterator(); all.hasNext(); ) {
            Tree tree = all.next();
            if (tree.size >= 0 && tree.gradedIn <= year - KEPT) {
                thrown.add(tree.tag);
                bench(tree, year, UNTIL_SOLD);
                all.remove();
            }
        }
        accounts.count(Units.THROWN_AWAY, thrown.size());
        tell(year + "-11-05 culled ", thrown, "; cull=surplus");
        records.trees.forEach(tree -> bench(tree, year, 1));
        records.trees.addAll(severed);
    }

    private void sell(int year, int cultivar, int size) {
        // orders are taken four years ahead: after the end, those taken before it are served
        boolean isOver = year - Truth.AHEAD > last;
        int ordered = isOver ? 0 : truth.ordered(cultivar, size, year);
        int asked = truth.asked(cultivar, size, year) + (isOver ? truth.ordered(cultivar, size, year) : 0);
        List<Tree> ready = records.trees.stream()
                .filter(tree -> tree.cultivar == cultivar && tree.size == size)
                .sorted(Comparator.comparingInt((Tree tree) -> tree.gradedIn).thenComparing(tree -> tree.tag))
                .limit(ordered + asked)
                .toList();
        double price = truth.price(cultivar, size, Math.min(year, last));
        ready.forEach(tree -> bench(tree, year, UNTIL_SOLD));
        records.trees.removeAll(ready);
        hours(ready.size() * Cost.SELLING_HOURS);
        tell(year + "-11-01 sold ", ready.stream().map(tree -> tree.tag).toList(), "");
        int missed = Math.max(0, ordered - ready.size());
        accounts.add(Line.SALES, ready.size() * price);
        accounts.add(Line.PENALTIES, -missed * price * Cost.PENALTY);
        accounts.count(Units.SOLD, ready.size());
        accounts.count(Units.ASKED, ordered + asked);
        accounts.count(Units.ORDERED, ordered);
        accounts.count(Units.ORDERS_MISSED, missed);
    }

    private int last = Integer.MAX_VALUE - Truth.AHEAD;

    /** Tell which is the last year in which anything is set, so that orders are taken no longer. */
    void last(int year) {
        last = year;
    }

    private void room(int year) {
        double squares = 0;
        for (Tree tree : records.trees) {
            squares += Cost.square(year - tree.set);
        }
        accounts.add(
                Line.MORE_ROOM,
                -Math.max(0, squares - truth.means().roomM2()) * truth.means().m2Year() * (Cost.MORE_ROOM - 1));
        if (year > last) {
            return;
        }
        for (int mother = 0; mother < truth.mothers(); mother++) {
            if (!records.gone[mother]) {
                accounts.add(Line.GROUND, -Cost.MOTHER_M2 * truth.means().m2Year());
            }
        }
    }

    private void bench(Tree tree, int year, double share) {
        accounts.add(
                Line.BENCH,
                -Cost.square(year - tree.set) * share * truth.means().m2Year());
    }

    private void hours(double hours) {
        accounts.add(Line.HOURS, -hours * truth.means().hour());
    }

    private void tell(String what, List<String> tags, String fields) {
        if (!tags.isEmpty()) {
            day.add(what + String.join(" ", tags) + fields);
        }
    }

    private void written() {
        notebook.write(day);
        day.clear();
    }

    private static String money(double amount) {
        return String.format(Locale.ROOT, "%.2f EUR", amount);
    }

    private static String number(double number) {
        return String.format(Locale.ROOT, "%.1f", number);
    }
}
