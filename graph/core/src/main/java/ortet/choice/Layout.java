package ortet.choice;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/**
 * The rows of the programme: what all mothers share.
 *
 * <p>A limit holds use at or below what there is. A sales row holds the trees ready for an outlet in a year (and scenario),
 * which are sold within the demand at one price and beyond it at another. A share row holds the trees of a group less its
 * share of the year's total at or below 0. Hours and room may be overrun, at a price that nobody pays who need not, so that
 * there always is a plan.
 */
final class Layout {
    /** How much dearer an hour or square metre too much is than the dearest tree. */
    private static final double OVERRUN = 3000;
    /** What a step of severity counts in later years, so that of two plans alike but in their order the milder comes first. */
    private static final double LATER = 0.9;

    /** How much more than the dearest thing a tree asked for counts, when the aim is to meet demand. */
    private static final double WANTED = 100;

    private static final double ROUNDING = 1e-7;

    final ChoiceQuestion question;
    final int years;
    final int allYears;
    final int seasons;
    final int scenarios;
    final boolean wantsDemand;
    final double wanted;
    final double dearest;
    final double overrun;
    final List<String> places;
    /** By deed and year: how many steps it counts less than leaving. */
    final double[][] severity;
    /** By row: what there is, or the demand. */
    final double[] available;
    /** By row: the price within the demand, for a sales row; the price of an overrun, for hours and room; else infinite. */
    final double[] most;
    /** By row: the price beyond the demand, for a sales row; else 0. */
    final double[] least;

    private final List<Resource> resources = new ArrayList<>();
    private final Map<String, Integer> placeAt = new HashMap<>();
    private final Map<List<String>, Integer> outletAt = new HashMap<>();
    private final Map<String, Double> dearestOf = new HashMap<>();
    private final Map<String, Integer> licenceAt = new HashMap<>();
    private final List<Map<String, Integer>> groupAt = new ArrayList<>();
    private final int firstRoom;
    private final int firstLicence;
    private final int firstGroup;
    final int firstSales;
    final int rows;

    Layout(ChoiceQuestion question, int scenarios) {
        this(question, scenarios, 1);
    }

    /**
     * Lay out the rows.
     *
     * @param scale by what to multiply hours, room, licences and demand, for a sample of the mothers
     */
    Layout(ChoiceQuestion question, int scenarios, double scale) {
        this.question = question;
        Settings settings = question.settings();
        this.years = settings.years();
        this.scenarios = scenarios;
        int longest = question.ways().stream()
                .flatMap(ways -> ChoiceQuestion.raisings(ways).stream())
                .mapToInt(Raising::years)
                .max()
                .orElse(0);
        this.allYears = years + longest;
        this.seasons = question.limits().hours().seasons();
        this.places = List.copyOf(new TreeSet<>(question.limits().roomM2().keySet()));
        for (String place : places) {
            placeAt.put(place, placeAt.size());
        }
        for (int year = 0; year < allYears; year++) {
            for (int season = 0; season < seasons; season++) {
                resources.add(new Resource(Resource.Kind.HOURS, "", year, season));
            }
        }
        this.firstRoom = resources.size();
        for (String place : places) {
            for (int year = 0; year < allYears; year++) {
                for (int season = 0; season < seasons; season++) {
                    resources.add(new Resource(Resource.Kind.ROOM, place, year, season));
                }
            }
        }
        this.firstLicence = resources.size();
        for (Licence licence : question.limits().licences()) {
            licenceAt.put(licence.cultivar(), licenceAt.size());
            for (int year = 0; year < years; year++) {
                resources.add(new Resource(Resource.Kind.LICENCE, licence.cultivar(), year, 0));
            }
        }
        this.firstGroup = resources.size();
        int group = 0;
        for (Concentration limit : question.limits().concentrations()) {
            Map<String, Integer> at = new LinkedHashMap<>();
            for (Mother mother : question.mothers()) {
                if (!at.containsKey(limit.of(mother))) {
                    at.put(limit.of(mother), group++);
                    for (int year = 0; year < years; year++) {
                        resources.add(new Resource(
                                limit.on() == Concentration.On.CLONE
                                        ? Resource.Kind.CLONE_SHARE
                                        : Resource.Kind.PLACE_SHARE,
                                limit.of(mother),
                                year,
                                0));
                    }
                }
            }
            groupAt.add(at);
        }
        this.firstSales = resources.size();
        for (Outlet outlet : question.outlets()) {
            outletAt.put(List.of(outlet.cultivar(), outlet.sizeClass()), outletAt.size());
            dearestOf.merge(outlet.cultivar(), Math.max(1, outlet.price()), Math::max);
        }
        this.rows = firstSales + question.outlets().size() * allYears * scenarios;
        this.dearest = dearest();
        this.wantsDemand = settings.aim() == Aim.DEMAND;
        this.wanted = wantsDemand ? WANTED * dearest : 0;
        this.overrun = OVERRUN * (dearest + wanted);
        this.severity = new double[Deed.values().length][years];
        for (Deed deed : Deed.values()) {
            for (int year = 0; year < years; year++) {
                severity[deed.ordinal()][year] = deed.severity() * discount(year) * (year == 0 ? 1 : LATER);
            }
        }
        this.available = new double[rows];
        this.most = new double[rows];
        this.least = new double[rows];
        for (int row = 0; row < firstSales; row++) {
            Resource resource = resources.get(row);
            available[row] = available(resource) * scale;
            most[row] = row < firstLicence ? overrun : Double.POSITIVE_INFINITY;
        }
        for (int at = 0; at < question.outlets().size(); at++) {
            Outlet outlet = question.outlets().get(at);
            for (int year = 0; year < allYears; year++) {
                for (int scenario = 0; scenario < scenarios; scenario++) {
                    int row = sales(at, year, scenario);
                    available[row] = outlet.demandIn(year) * scale;
                    most[row] = (wanted + outlet.price() * discount(year)) / scenarios;
                    least[row] = outlet.surplusPrice() * discount(year) / scenarios;
                }
            }
        }
    }

    private double dearest() {
        double most = 1;
        for (Outlet outlet : question.outlets()) {
            most = Math.max(most, outlet.price());
        }
        for (Mother mother : question.mothers()) {
            most = Math.max(most, dearest(mother.atEnd()));
            most = Math.max(most, mother.asTree().map(Layout::dearest).orElse(0.0));
        }
        return most;
    }

    private static double dearest(Worth worth) {
        double dearest = 0;
        for (List<Double> list : List.of(worth.leftLong(), worth.afterLayering(), worth.afterCuttingBack())) {
            for (double one : list) {
                dearest = Math.max(dearest, one);
            }
        }
        return dearest;
    }

    private double available(Resource resource) {
        Limits limits = question.limits();
        return switch (resource.kind()) {
            case HOURS -> limits.hours().at(resource.year(), resource.season());
            case ROOM -> limits.roomM2().get(resource.name()).at(resource.year(), resource.season());
            case LICENCE ->
                limits.licences().get(licenceAt.get(resource.name())).in(resource.year());
            case CLONE_SHARE, PLACE_SHARE -> 0;
        };
    }

    /** Return what a step of severity counts in money, for mothers of a cultivar. */
    double step(String cultivar) {
        return question.settings().ties() * dearestOf.getOrDefault(cultivar, 1.0);
    }

    double discount(int year) {
        return Math.pow(1 - question.settings().discount(), year);
    }

    Resource resource(int row) {
        return resources.get(row);
    }

    boolean isSales(int row) {
        return row >= firstSales;
    }

    boolean isShare(int row) {
        return row >= firstGroup && row < firstSales;
    }

    int hours(int year, int season) {
        return year * seasons + season;
    }

    /** Return the row of a place's room, or -1 when it has no limit. */
    int room(String place, int year, int season) {
        Integer at = placeAt.get(place);
        return at == null ? -1 : firstRoom + (at * allYears + year) * seasons + season;
    }

    int licence(String cultivar, int year) {
        Integer at = licenceAt.get(cultivar);
        return at == null ? -1 : firstLicence + at * years + year;
    }

    int outlet(String cultivar, String sizeClass) {
        return outletAt.getOrDefault(List.of(cultivar, sizeClass), -1);
    }

    int sales(int outlet, int year, int scenario) {
        return firstSales + (outlet * allYears + year) * scenarios + scenario;
    }

    int concentrations() {
        return groupAt.size();
    }

    double share(int concentration) {
        return question.limits().concentrations().get(concentration).share();
    }

    int share(int concentration, Mother mother, int year) {
        Concentration limit = question.limits().concentrations().get(concentration);
        return firstGroup + groupAt.get(concentration).get(limit.of(mother)) * years + year;
    }

    /** Return the rows of all groups of a concentration in a year. */
    int[] shares(int concentration, int year) {
        return groupAt.get(concentration).values().stream()
                .mapToInt(group -> firstGroup + group * years + year)
                .toArray();
    }

    /** Return the concentration that a row of a group's share belongs to. */
    int concentrationOf(int row) {
        int group = (row - firstGroup) / years;
        int at = 0;
        while (group >= groupAt.get(at).size()) {
            group -= groupAt.get(at).size();
            at++;
        }
        return at;
    }

    /** Tell whether more hours or room are used than there are. */
    boolean isOverrun(double[] use) {
        for (int row = 0; row < firstLicence; row++) {
            if (use[row] > available[row] + ROUNDING * Math.max(1, available[row])) {
                return true;
            }
        }
        return false;
    }

    /** Return by how much a right or share is exceeded, rounding forgiven. */
    double beyond(int row, double[] use) {
        double allowed = available[row];
        if (isShare(row)) {
            int at = concentrationOf(row);
            allowed = share(at) * use[rows + at * years + resource(row).year()];
        }
        double beyond = use[row] - allowed;
        return beyond > ROUNDING * Math.max(1, allowed) ? beyond : 0;
    }
}
