package ortet.choice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Goes through every plan of a tiny nursery, written anew from the words of the question: no state of the planner, no price
 * and no solver.
 */
final class EveryPlan {
    /** What one mother's plan brings and uses. */
    private final class Plan {
        double money;
        double reluctance;
        Deed first = Deed.REST;
        /** By the number of what is used. */
        double[] use = {};

        Plan copy() {
            Plan copy = new Plan();
            copy.money = money;
            copy.reluctance = reluctance;
            copy.first = first;
            copy.use = use.clone();
            return copy;
        }

        Plan first(int year, Deed deed) {
            if (year == 0) {
                first = deed;
            }
            return this;
        }

        /** Leaving long and resting are one deed under two names. */
        boolean isFirst(Deed deed) {
            return first == (deed == Deed.LEAVE_LONG ? Deed.REST : deed);
        }

        void use(String what, double amount) {
            if (amount != 0) {
                int at = numberOf(what);
                if (at >= use.length) {
                    use = Arrays.copyOf(use, at + 1);
                }
                use[at] += amount;
            }
        }

        double of(int at) {
            return at < use.length ? use[at] : 0;
        }

        Plan and(Plan other) {
            Plan both = new Plan();
            both.money = money + other.money;
            both.reluctance = reluctance + other.reluctance;
            both.use = Arrays.copyOf(use, Math.max(use.length, other.use.length));
            for (int at = 0; at < other.use.length; at++) {
                both.use[at] += other.use[at];
            }
            return both;
        }
    }

    /** A part of a mother: 'L' left long since the beginning, 'S' severed so many years ago, 'C' cut back so many years ago. */
    private record Part(char kind, int age) {
        Part older() {
            return new Part(kind, age + 1);
        }
    }

    /** The best of all plans. */
    record Best(boolean exists, double worth, double reluctance, double met, long plans) {}

    private final ChoiceQuestion question;
    private final int years;
    private final double wanted;
    private final Map<Outlet, Map<Integer, Integer>> keys = new IdentityHashMap<>();
    private final Map<String, Integer> numbers = new HashMap<>();
    private final List<String[]> names = new ArrayList<>();
    private List<Plan> made = List.of();
    private Mother mother;
    private int barredMother = -1;
    private Deed barred = Deed.REST;

    private EveryPlan(ChoiceQuestion question) {
        this.question = question;
        this.years = question.settings().years();
        double dearest = 1;
        for (Outlet outlet : question.outlets()) {
            dearest = Math.max(dearest, outlet.price());
        }
        for (Mother one : question.mothers()) {
            List<Worth> worths = new ArrayList<>(List.of(one.atEnd()));
            one.asTree().ifPresent(worths::add);
            for (Worth worth : worths) {
                for (List<Double> list : List.of(worth.leftLong(), worth.afterLayering(), worth.afterCuttingBack())) {
                    dearest = Math.max(
                            dearest, list.stream().mapToDouble(d -> d).max().orElse(0));
                }
            }
        }
        this.wanted = question.settings().aim() == Aim.DEMAND ? 100 * dearest : 0;
    }

    static Best of(ChoiceQuestion question) {
        return new EveryPlan(question).best();
    }

    /** Return the best of the plans in which one mother does not begin with a deed. */
    static Best without(ChoiceQuestion question, int mother, Deed deed) {
        EveryPlan every = new EveryPlan(question);
        every.barredMother = mother;
        every.barred = deed;
        return every.best();
    }

    private Best best() {
        List<List<Plan>> all = new ArrayList<>();
        for (Mother one : question.mothers()) {
            mother = one;
            made = new ArrayList<>();
            List<Part> parts = new ArrayList<>();
            for (int i = 0; i < one.parts(); i++) {
                parts.add(new Part('L', 0));
            }
            from(0, parts, new Plan());
            boolean isBarred = all.size() == barredMother;
            all.add(made.stream()
                    .filter(plan -> !isBarred || !plan.isFirst(barred))
                    .toList());
        }
        double[] best = {Double.NEGATIVE_INFINITY, Double.NaN, 0};
        long[] plans = {0};
        combine(all, 0, new Plan(), best, plans);
        return new Best(best[0] > Double.NEGATIVE_INFINITY, best[0], best[2], best[1], plans[0]);
    }

    private void combine(List<List<Plan>> all, int at, Plan sum, double[] best, long[] plans) {
        if (at == all.size()) {
            plans[0]++;
            double worth = worth(sum) - sum.reluctance;
            if (worth > best[0] && fits(sum)) {
                best[0] = worth;
                best[1] = met(sum);
                best[2] = sum.reluctance;
            }
            return;
        }
        for (Plan plan : all.get(at)) {
            combine(all, at + 1, sum.and(plan), best, plans);
        }
    }

    private boolean fits(Plan plan) {
        Map<String, Map<Integer, Map<String, Double>>> shares = new TreeMap<>();
        for (int at = 0; at < plan.use.length; at++) {
            String[] words = words(at);
            double amount = plan.use[at];
            Limits limits = question.limits();
            switch (words[0]) {
                case "hours":
                    if (amount > limits.hours().at(number(words[1]), number(words[2])) + 1e-9) {
                        return false;
                    }
                    break;
                case "room":
                    Amounts room = limits.roomM2().get(words[3]);
                    if (room != null && amount > room.at(number(words[1]), number(words[2])) + 1e-9) {
                        return false;
                    }
                    break;
                case "licence":
                    for (Licence licence : limits.licences()) {
                        if (licence.cultivar().equals(words[2]) && amount > licence.in(number(words[1])) + 1e-9) {
                            return false;
                        }
                    }
                    break;
                case "CLONE":
                case "PLACE":
                    shares.computeIfAbsent(words[0], k -> new TreeMap<>())
                            .computeIfAbsent(number(words[1]), k -> new TreeMap<>())
                            .put(words[2], amount);
                    break;
                default:
                    break;
            }
        }
        for (Concentration limit : question.limits().concentrations()) {
            for (Map<String, Double> groups :
                    shares.getOrDefault(limit.on().name(), Map.of()).values()) {
                double total = groups.values().stream().mapToDouble(d -> d).sum();
                for (double one : groups.values()) {
                    if (one > limit.share() * total + 1e-9) {
                        return false;
                    }
                }
            }
        }
        return true;
    }

    private double worth(Plan plan) {
        double worth = plan.money;
        for (Outlet outlet : question.outlets()) {
            for (int year = 0; year < years + 4; year++) {
                double ready = plan.of(key(outlet, year));
                double sold = Math.min(ready, outlet.demandIn(year));
                worth += wanted * sold
                        + (outlet.price() * sold + outlet.surplusPrice() * (ready - sold)) * discount(year);
            }
        }
        return worth;
    }

    private double met(Plan plan) {
        double asked = 0;
        double delivered = 0;
        int longest = 0;
        for (Ways ways : question.ways()) {
            for (Raising raising : ChoiceQuestion.raisings(ways)) {
                for (Grade grade : raising.grades()) {
                    longest = Math.max(longest, grade.years());
                }
                longest = Math.max(longest, raising.perEstablished().size() - 1);
            }
        }
        for (Outlet outlet : question.outlets()) {
            for (int year = 0; year < years + longest; year++) {
                asked += outlet.demandIn(year);
                delivered += Math.min(plan.of(key(outlet, year)), outlet.demandIn(year));
            }
        }
        return asked == 0 ? Double.NaN : delivered / asked;
    }

    private int key(Outlet outlet, int year) {
        return keys.computeIfAbsent(outlet, fresh -> new HashMap<>())
                .computeIfAbsent(
                        year, fresh -> numberOf("sale|" + year + "|" + outlet.cultivar() + "|" + outlet.sizeClass()));
    }

    /** Return the number of what is used. */
    private int numberOf(String what) {
        return numbers.computeIfAbsent(what, fresh -> {
            names.add(what.split("\\|"));
            return names.size() - 1;
        });
    }

    private String[] words(int at) {
        return names.get(at);
    }

    private static int number(String word) {
        return Integer.parseInt(word);
    }

    private double discount(int year) {
        return Math.pow(1 - question.settings().discount(), year);
    }

    private void from(int year, List<Part> parts, Plan plan) {
        if (year == years) {
            Plan end = plan.copy();
            end.money += worth(mother.atEnd(), parts, year) * discount(year);
            made.add(end);
            return;
        }
        boolean held = year < mother.heldYears();
        // nothing taken
        Plan left = plan.copy().first(year, Deed.REST);
        upkeep(left, year, parts, false);
        from(year + 1, older(parts), left);
        // cut back, or cuttings
        List<Part> cut = new ArrayList<>();
        parts.forEach(part -> cut.add(new Part('C', 1)));
        Plan cutBack = plan.copy().first(year, Deed.CUT_BACK);
        upkeep(cutBack, year, parts, true);
        SetUp setUp = question.setUp();
        Plan thrownAway = cutBack.copy();
        needs(thrownAway, setUp.cuttingBack(), year, 1);
        reluctant(thrownAway, year, 2);
        from(year + 1, cut, thrownAway);
        if (held) {
            return;
        }
        Ways ways = question.ways().stream()
                .filter(one -> one.cultivar().equals(mother.cultivar()))
                .findFirst()
                .orElseThrow();
        int cuttings = free(parts, parts, year, 2);
        for (Raising raising : ways.cuttings()) {
            for (int many = 1; many <= cuttings; many++) {
                Plan struck = cutBack.copy().first(year, Deed.TAKE_CUTTINGS);
                needs(struck, setUp.cuttings(), year, 1);
                reluctant(struck, year, 3);
                set(struck, raising, year, many, mother.rates().cuttings(0, 0));
                from(year + 1, cut, struck);
            }
        }
        if (mother.asTree().isPresent()) {
            Plan sold = plan.copy().first(year, Deed.SELL);
            needs(sold, setUp.selling(), year, 1);
            reluctant(sold, year, 5);
            sold.money += worth(mother.asTree().get(), parts, year) * discount(year);
            made.add(sold);
        }
        layer(year, parts, plan, ways);
    }

    private void layer(int year, List<Part> parts, Plan plan, Ways ways) {
        for (int mask = 1; mask < 1 << parts.size(); mask++) {
            List<Part> taken = new ArrayList<>();
            List<Part> later = new ArrayList<>();
            boolean open = true;
            for (int i = 0; i < parts.size(); i++) {
                Part part = parts.get(i);
                if ((mask >> i & 1) == 1) {
                    taken.add(part);
                    later.add(new Part('S', 1));
                    open &= part.kind() != 'S' || part.age() >= mother.restYears();
                    open &= part.kind() != 'L' || year >= mother.restNow();
                } else {
                    later.add(part.older());
                }
            }
            if (!open) {
                continue;
            }
            boolean everything = taken.size() == parts.size();
            int thin = free(parts, taken, year, 0);
            int thick = free(parts, taken, year, 1);
            List<Raising> thinWays = ways.layers().get(0);
            List<Raising> thickWays = ways.layers().get(1);
            double share = mother.rates().layers(0, 0);
            for (int some = 0; some <= thin; some++) {
                for (int many = 0; many <= thick; many++) {
                    for (int first = 0; first <= many; first++) {
                        if (some + many == 0 || thickWays.size() == 1 && first < many) {
                            continue;
                        }
                        Plan layered = plan.copy().first(year, Deed.LAYER);
                        upkeep(layered, year, parts, false);
                        needs(layered, question.setUp().layering(), year, 1);
                        reluctant(layered, year, 4);
                        set(layered, thinWays.get(0), year, some, share);
                        set(layered, thickWays.get(0), year, first, share);
                        if (first < many) {
                            set(layered, thickWays.get(1), year, many - first, share);
                        }
                        from(year + 1, later, layered);
                        if (everything && mother.asTree().isPresent()) {
                            Plan sold = layered.copy().first(year, Deed.LAYER_AND_SELL);
                            needs(sold, question.setUp().selling(), year, 1);
                            reluctant(sold, year, 2); // beyond layering, 6 in all
                            sold.money += mother.asTree().get().afterLayering().get(0) * discount(year);
                            made.add(sold);
                        }
                    }
                }
            }
        }
    }

    private static List<Part> older(List<Part> parts) {
        return parts.stream().map(Part::older).toList();
    }

    /** Positions in a band (or cuttings, 2) on the parts taken: like parts together, rounded down. */
    private int free(List<Part> parts, List<Part> taken, int year, int band) {
        Map<Part, Integer> like = new HashMap<>();
        taken.forEach(part -> like.merge(part, 1, Integer::sum));
        int sum = 0;
        for (Map.Entry<Part, Integer> one : like.entrySet()) {
            Growth growth = mother.growth();
            Wood wood = switch (one.getKey().kind()) {
                case 'L' -> last(growth.leftLong(), year);
                case 'S' -> last(growth.afterLayering(), one.getKey().age() - 1);
                default -> last(growth.afterCuttingBack(), one.getKey().age() - 1);
            };
            int whole = band == 2 ? wood.cuttings() : wood.positions().get(band);
            sum += whole * one.getValue() / parts.size();
        }
        return sum;
    }

    private static <T> T last(List<T> list, int at) {
        return list.get(Math.min(at, list.size() - 1));
    }

    private double worth(Worth worth, List<Part> parts, int year) {
        double sum = 0;
        for (Part part : parts) {
            sum += switch (part.kind()) {
                case 'L' -> last(worth.leftLong(), year);
                case 'S' -> last(worth.afterLayering(), part.age());
                default -> last(worth.afterCuttingBack(), part.age());
            };
        }
        return sum / parts.size();
    }

    private void upkeep(Plan plan, int year, List<Part> parts, boolean cutBack) {
        for (Part part : parts) {
            boolean shortened = cutBack || part.kind() == 'S' && part.age() == 1;
            needs(plan, shortened ? mother.whileShort() : mother.whileLong(), year, 1.0 / parts.size());
        }
    }

    /** The page's order: each step counts a share of the cultivar's dearest price less, later years nine tenths of that. */
    private void reluctant(Plan plan, int year, int steps) {
        double dearest = 1;
        for (Outlet outlet : question.outlets()) {
            if (outlet.cultivar().equals(mother.cultivar())) {
                dearest = Math.max(dearest, outlet.price());
            }
        }
        plan.reluctance += steps * question.settings().ties() * dearest * discount(year) * (year == 0 ? 1 : 0.9);
    }

    private void set(Plan plan, Raising raising, int year, int many, double share) {
        if (many == 0) {
            return;
        }
        double trees = many * share;
        needs(plan, raising.perSet(), year, many);
        for (int after = 0; after < raising.perEstablished().size(); after++) {
            needs(plan, raising.perEstablished().get(after), year + after, trees);
        }
        for (Grade grade : raising.grades()) {
            plan.use(
                    "sale|" + (year + grade.years()) + "|" + mother.cultivar() + "|" + grade.sizeClass(),
                    trees * grade.share());
        }
        plan.use("licence|" + year + "|" + mother.cultivar(), many);
        plan.use("CLONE|" + year + "|" + mother.ortet(), trees);
        plan.use("PLACE|" + year + "|" + mother.place(), trees);
    }

    private void needs(Plan plan, Needs needs, int year, double often) {
        int seasons = question.limits().hours().seasons();
        plan.money -= often * needs.material() * discount(year);
        for (int season = 0; season < needs.hours().size(); season++) {
            double hours = often * needs.hours().get(season);
            plan.use("hours|" + year + "|" + season, hours);
            plan.money -= hours * question.costs().hour() * discount(year);
        }
        for (int season = 0; season < needs.areaM2().size(); season++) {
            double area = often * needs.areaM2().get(season);
            plan.use("room|" + year + "|" + season + "|" + needs.place(), area);
            plan.money -= area * question.costs().m2Year() / seasons * discount(year);
        }
    }
}
