package ortet.choice;

import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;

/** Invented nurseries to choose in: small ones that can be gone through plan by plan, and large ones. */
final class Nurseries {
    static final Settings SMALL = new Settings(Aim.MARGIN, 2, 1, 0, 0, 40, 0, 0, Duration.ofSeconds(60));

    private Nurseries() {}

    /** A nursery of two or three mothers, two years and a handful of positions, with everything that can be limited. */
    static ChoiceQuestion tiny(long seed) {
        Random random = new Random(seed);
        int seasons = 1 + random.nextInt(2);
        int size = 2 + random.nextInt(2);
        int most = size == 2 ? 2 : 1;
        List<Mother> mothers = new ArrayList<>();
        for (int at = 0; at < size; at++) {
            mothers.add(tinyMother(random, at, seasons, most));
        }
        List<Ways> ways = new ArrayList<>();
        List<Outlet> outlets = new ArrayList<>();
        for (String cultivar : List.of("A", "B")) {
            ways.add(new Ways(
                    cultivar,
                    List.of(List.of(raising(random, "thin", seasons)), thick(random, seasons)),
                    random.nextInt(3) > 0 ? List.of(raising(random, "cutting", seasons)) : List.of()));
            for (String size2 : List.of("S", "L")) {
                double price = 30 + random.nextInt(90);
                outlets.add(new Outlet(
                        cultivar,
                        size2,
                        price,
                        random.nextInt(3) == 0 ? price / 4 : 0,
                        List.of(random.nextInt(3) * 0.7, random.nextInt(4) * 0.6, 1.0)));
            }
        }
        Map<String, Amounts> room = new TreeMap<>();
        room.put("P", amounts(random, seasons, 3 + random.nextInt(5)));
        if (random.nextBoolean()) {
            room.put("Q", amounts(random, seasons, 1 + random.nextInt(4)));
        }
        List<Licence> licences = random.nextInt(3) == 0 ? List.of(new Licence("A", random.nextInt(3))) : List.of();
        List<Concentration> concentrations = new ArrayList<>();
        if (random.nextInt(4) == 0) {
            concentrations.add(new Concentration(
                    Concentration.On.CLONE,
                    mothers.stream().map(Mother::ortet).distinct().count() == 1 ? 1 : 0.6));
        }
        if (random.nextInt(6) == 0) {
            concentrations.add(new Concentration(
                    Concentration.On.PLACE,
                    mothers.stream().map(Mother::place).distinct().count() == 1 ? 1 : 0.55));
        }
        Costs costs = new Costs(random.nextInt(3) * 3, random.nextInt(2) * 2);
        return new ChoiceQuestion(
                mothers,
                ways,
                outlets,
                new Limits(amounts(random, seasons, 1 + random.nextInt(6)), room, licences, concentrations),
                costs,
                SeasonEffects.NONE,
                setUp(random, seasons),
                SMALL.discount(random.nextInt(3) == 0 ? 0.1 : 0).ties(random.nextInt(3) * 0.002));
    }

    /** In every other nursery going to a mother takes something, each deed something else. */
    private static SetUp setUp(Random random, int seasons) {
        Random own = new Random(random.nextLong());
        return own.nextBoolean()
                ? SetUp.NONE
                : new SetUp(visit(own, seasons), visit(own, seasons), visit(own, seasons), visit(own, seasons));
    }

    private static Needs visit(Random random, int seasons) {
        return new Needs(random.nextInt(4), figures(random, seasons, 0.4), List.of(), "");
    }

    private static List<Raising> thick(Random random, int seasons) {
        List<Raising> list = new ArrayList<>();
        list.add(raising(random, "thick", seasons));
        if (random.nextInt(3) == 0) {
            list.add(raising(random, "thick and long", seasons));
        }
        return list;
    }

    private static Raising raising(Random random, String key, int seasons) {
        return new Raising(
                key,
                new Needs(random.nextInt(3), figures(random, seasons, 0.8), List.of(), ""),
                List.of(
                        new Needs(0, List.of(), figures(random, seasons, 0.7), "P"),
                        new Needs(random.nextInt(2), figures(random, seasons, 0.3), figures(random, seasons, 1), "P")),
                List.of(
                        new Grade("S", random.nextInt(2), random.nextDouble() * 0.5),
                        new Grade("L", 1 + random.nextInt(2), random.nextDouble() * 0.5)));
    }

    private static List<Double> figures(Random random, int seasons, double most) {
        List<Double> list = new ArrayList<>();
        for (int season = 0; season < seasons; season++) {
            list.add(random.nextDouble() * most);
        }
        return list;
    }

    private static Amounts amounts(Random random, int seasons, double most) {
        List<List<Double>> years = new ArrayList<>();
        for (int year = 0; year < 2; year++) {
            years.add(figures(random, seasons, most).stream()
                    .map(one -> most / 2 + one)
                    .toList());
        }
        return new Amounts(years);
    }

    private static Mother tinyMother(Random random, int at, int seasons, int most) {
        int held = random.nextInt(8) == 0 ? 1 : 0;
        return new Mother(
                "K-" + at,
                random.nextBoolean() ? "A" : "B",
                "O-" + random.nextInt(2),
                random.nextBoolean() ? "P" : "Q",
                most == 1 ? 1 : 1 + random.nextInt(2),
                1 + random.nextInt(2),
                random.nextInt(8) == 0 ? 1 : 0,
                held,
                new Growth(
                        List.of(wood(random, most), wood(random, most)),
                        List.of(wood(random, most)),
                        List.of(wood(random, most))),
                random.nextInt(3) == 0 ? Optional.empty() : Optional.of(worth(random, 20)),
                worth(random, 15),
                new Needs(random.nextInt(2), figures(random, seasons, 0.3), figures(random, seasons, 0.5), "P"),
                new Needs(0, figures(random, seasons, 0.3), figures(random, seasons, 0.2), "P"),
                Rates.known(0.3 + 0.7 * random.nextDouble(), 0.2 + 0.7 * random.nextDouble()),
                Optional.empty());
    }

    private static Wood wood(Random random, int most) {
        return new Wood(List.of(random.nextInt(most + 1), random.nextInt(most + 1)), random.nextInt(3));
    }

    private static Worth worth(Random random, int most) {
        return new Worth(
                List.of((double) random.nextInt(most), (double) random.nextInt(most)),
                List.of(random.nextInt(most) / 2.0, random.nextInt(most) / 2.0),
                List.of(random.nextInt(most) / 2.0, random.nextInt(most) / 2.0));
    }

    /**
     * A nursery like one that would ask: cultivars with three bands and two sizes, mothers at different stages, four seasons,
     * posterior draws with a shared season, demand for about half of what the mothers could give, hours and room for less.
     */
    static ChoiceQuestion like(int size, int cultivars, int draws, long seed, Settings settings) {
        Random random = new Random(seed);
        int seasons = 4;
        int years = settings.years();
        List<String> names = new ArrayList<>();
        List<Ways> ways = new ArrayList<>();
        List<Outlet> outlets = new ArrayList<>();
        double[] take = new double[cultivars];
        double perCultivar = (double) size / cultivars;
        for (int c = 0; c < cultivars; c++) {
            String name = "Cultivar " + c;
            names.add(name);
            take[c] = random.nextGaussian() * 0.8 + 0.6;
            ways.add(new Ways(
                    name,
                    List.of(
                            List.of(grown("thin", 0.15, 2, 0.5, 0.05)),
                            List.of(grown("middle", 0.2, 2, 0.7, 0.08), grown("middle, grown on", 0.2, 3, 0.2, 0.1)),
                            List.of(grown("thick", 0.3, 3, 0.1, 0.12))),
                    List.of(grown("cutting", 0.02, 4, 0.8, 0.03))));
            double value = 20 + 30 * random.nextDouble();
            outlets.add(new Outlet(name, "small", value, 0, demand(random, perCultivar, 1.0)));
            outlets.add(new Outlet(name, "large", value * 2.4, 0, demand(random, perCultivar, 0.7)));
        }
        List<Draws> layerSeasons = new ArrayList<>();
        List<Draws> cuttingSeasons = new ArrayList<>();
        for (int year = 0; year < years; year++) {
            layerSeasons.add(normal(random, 0, 0.4, draws));
            cuttingSeasons.add(normal(random, 0, 0.4, draws));
        }
        Draws[] layerEstablish = new Draws[cultivars];
        Draws[] cuttingEstablish = new Draws[cultivars];
        for (int c = 0; c < cultivars; c++) {
            layerEstablish[c] = shares(random, 0.85, draws);
            cuttingEstablish[c] = shares(random, 0.7, draws);
        }
        List<Mother> mothers = new ArrayList<>();
        for (int at = 0; at < size; at++) {
            int c = random.nextInt(cultivars);
            mothers.add(
                    likely(random, size, at, c, names.get(c), take[c], layerEstablish[c], cuttingEstablish[c], draws));
        }
        Map<String, Amounts> room = new LinkedHashMap<>();
        int places = Math.max(2, Math.min(10, size / 20));
        for (int place = 0; place < places; place++) {
            double area = 1.1 * size / places;
            room.put("House " + place, Amounts.everyYear(List.of(area, area, area, area)));
        }
        double bench = 0.9 * size;
        room.put("Bench", Amounts.everyYear(List.of(bench, bench, bench, bench)));
        double hours = 0.9 * size;
        return new ChoiceQuestion(
                mothers,
                ways,
                outlets,
                new Limits(
                        Amounts.everyYear(List.of(hours, hours * 1.2, hours, hours * 0.6)),
                        room,
                        List.of(new Licence(names.get(0), (int) Math.ceil(perCultivar))),
                        List.of(new Concentration(Concentration.On.PLACE, Math.min(1, 2.0 / places)))),
                new Costs(8, 6),
                new SeasonEffects(layerSeasons, cuttingSeasons),
                settings);
    }

    private static List<Double> demand(Random random, double mothers, double each) {
        List<Double> list = new ArrayList<>();
        for (int year = 0; year < 9; year++) {
            list.add((double) Math.round(mothers * each * (0.5 + random.nextDouble())));
        }
        return list;
    }

    private static Raising grown(String key, double hours, int years, double small, double area) {
        List<Needs> later = new ArrayList<>();
        for (int year = 0; year < years; year++) {
            double m2 = area * (year + 1) / 2;
            later.add(new Needs(
                    1,
                    List.of(0.03, 0.02, 0.02, 0.01),
                    List.of(year == 0 ? 0.0 : m2, year == 0 ? 0.0 : m2, m2, m2),
                    "Bench"));
        }
        return new Raising(
                key,
                new Needs(1.2, List.of(0.0, hours, hours / 2, 0.0), List.of(), ""),
                later,
                List.of(new Grade("small", years, small), new Grade("large", years, 0.9 - small)));
    }

    private static Mother likely(
            Random random,
            int size,
            int at,
            int cultivar,
            String name,
            double take,
            Draws layerEstablish,
            Draws cuttingEstablish,
            int draws) {
        int thin = 1 + random.nextInt(4);
        int middle = random.nextInt(4);
        int thick = random.nextInt(2);
        List<Wood> left = new ArrayList<>();
        for (int year = 0; year < 5; year++) {
            left.add(new Wood(
                    List.of(Math.max(0, thin - year / 2), middle + year / 2, thick + year / 3), 20 + 5 * year));
        }
        boolean untried = random.nextInt(10) == 0;
        double mean = take + 0.5 * random.nextGaussian();
        double tree = 60 + 60 * random.nextDouble();
        double area = 0.5 + 0.3 * random.nextInt(3);
        return new Mother(
                "K-" + at,
                name,
                name + " " + random.nextInt(3),
                "House " + at % Math.max(2, Math.min(10, size / 20)),
                1 + (random.nextInt(5) == 0 ? 1 : 0),
                2,
                random.nextInt(8) == 0 ? 1 : 0,
                random.nextInt(40) == 0 ? 2 : 0,
                new Growth(
                        left,
                        List.of(
                                new Wood(List.of(0, 0, 0), 5),
                                new Wood(List.of(thin, middle / 2, 0), 15),
                                new Wood(List.of(thin, middle, thick), 20)),
                        List.of(
                                new Wood(List.of(thin, 0, 0), 10),
                                new Wood(List.of(thin + 1, middle, 0), 20),
                                new Wood(List.of(thin, middle + 1, thick), 25))),
                Optional.of(new Worth(List.of(tree), List.of(tree * 0.7, tree * 0.8), List.of(tree * 0.6, tree * 0.8))),
                new Worth(List.of(tree * 1.1), List.of(tree * 0.8), List.of(tree * 0.8)),
                new Needs(
                        1,
                        List.of(0.2, 0.1, 0.1, 0.2),
                        List.of(area, area, area, area),
                        "House " + at % Math.max(2, Math.min(10, size / 20))),
                new Needs(
                        1,
                        List.of(0.1, 0.1, 0.1, 0.1),
                        List.of(area / 2, area / 2, area / 2, area / 2),
                        "House " + at % Math.max(2, Math.min(10, size / 20))),
                new Rates(
                        normal(random, mean, untried ? 0.9 : 0.35, draws),
                        layerEstablish,
                        normal(random, mean - 0.4, 0.4, draws),
                        cuttingEstablish,
                        Draws.of(1)),
                untried && thin + middle + thick >= 3 ? Optional.of(new Trial(3, 2.6, 1.4)) : Optional.empty());
    }

    private static Draws normal(Random random, double mean, double deviation, int draws) {
        double[] values = new double[draws];
        for (int draw = 0; draw < draws; draw++) {
            values[draw] = mean + deviation * random.nextGaussian();
        }
        return Draws.of(values);
    }

    private static Draws shares(Random random, double mean, int draws) {
        double[] values = new double[draws];
        for (int draw = 0; draw < draws; draw++) {
            values[draw] = Math.max(0, Math.min(1, mean + 0.05 * random.nextGaussian()));
        }
        return Draws.of(values);
    }
}
