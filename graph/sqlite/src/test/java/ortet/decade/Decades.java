package ortet.decade;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import ortet.decade.Accounts.Line;
import ortet.decade.Accounts.Units;

/** Plays ten years of many nurseries under everybody who decides; a program to be run by hand, not a test. */
public final class Decades {
    private static final int YEARS = 10;
    private static final int LEAST = 12;
    private static final int MOST = 24;
    /** In how many nurseries of each world the one who knows plays. */
    private static final int KNOWN = 2;

    private static final long SEED = 20_261_126;

    private Decades() {}

    /** What one who decides came to in one nursery. */
    record Result(World world, int nursery, Player player, Accounts accounts, int mothers, Map<String, Double> spent) {}

    /** Play one nursery under one who decides. */
    static Result play(Truth truth, int nursery, Player player, int years) {
        try (Notebook notebook = player.needsBook() ? new Book() : Notebook.NONE) {
            Years decade = new Years(truth, notebook);
            decade.past();
            decade.last(Truth.FIRST + years - 1);
            Policy policy = player.policy(truth, notebook);
            for (int year = Truth.FIRST; year < Truth.FIRST + years; year++) {
                decade.go(year, policy);
            }
            for (int year = Truth.FIRST + years; year < Truth.FIRST + years + Truth.AFTER; year++) {
                decade.growOn(year);
            }
            decade.close();
            return new Result(
                    truth.world(),
                    nursery,
                    player,
                    decade.accounts(),
                    truth.mothers(),
                    policy instanceof ByAdvice advice ? advice.spent() : Map.of());
        }
    }

    static Truth truth(World world, int nursery, int least, int most) {
        return new Truth(world, new Luck(SEED + 1000L * world.ordinal() + nursery), least, most);
    }

    /**
     * Run.
     *
     * @param arguments the file of results, which is gone on with where it is there; how many threads; up to how many
     *     nurseries of each world; for how many years; in which world alone
     */
    public static void main(String[] arguments) throws Exception {
        Path file = Path.of(arguments[0]);
        int threads = Integer.parseInt(arguments[1]);
        int most = arguments.length > 2 ? Integer.parseInt(arguments[2]) : Integer.MAX_VALUE;
        int years = arguments.length > 3 ? Integer.parseInt(arguments[3]) : YEARS;
        Set<World> worlds = arguments.length > 4 ? EnumSet.of(World.valueOf(arguments[4])) : EnumSet.allOf(World.class);
        Set<String> done = begun(file);
        List<int[]> tasks = new ArrayList<>();
        for (int nursery = 0; nursery < World.RIGHT.nurseries(); nursery++) {
            for (World world : worlds) {
                if (nursery < Math.min(most, world.nurseries())) {
                    tasks.add(new int[] {world.ordinal(), nursery});
                }
            }
        }
        ExecutorService workers = Executors.newFixedThreadPool(threads);
        AtomicInteger finished = new AtomicInteger();
        Map<String, Double> spent = new ConcurrentHashMap<>();
        long begin = System.nanoTime();
        List<Future<?>> all = new ArrayList<>();
        for (int[] task : tasks) {
            all.add(workers.submit(() -> {
                World world = World.values()[task[0]];
                for (Player player : Player.values()) {
                    boolean plays = player != Player.KNOWING || task[1] < KNOWN;
                    if (plays && !done.contains(key(world, task[1], player))) {
                        Result result = play(truth(world, task[1], LEAST, MOST), task[1], player, years);
                        result.spent().forEach((what, seconds) -> spent.merge(what, seconds, Double::sum));
                        append(file, line(result));
                    }
                }
                System.out.printf(
                        Locale.ROOT,
                        "%d of %d nurseries, %.0f s, %s%n",
                        finished.incrementAndGet(),
                        tasks.size(),
                        (System.nanoTime() - begin) / 1e9,
                        new TreeMap<>(spent));
                return null;
            }));
        }
        try {
            for (Future<?> one : all) {
                one.get();
            }
        } finally {
            workers.shutdownNow();
        }
        System.out.println(Summary.of(Files.readAllLines(file, StandardCharsets.UTF_8)));
    }

    private static String key(World world, int nursery, Player player) {
        return world + "," + nursery + "," + player + ",";
    }

    private static Set<String> begun(Path file) throws IOException {
        Set<String> done = new HashSet<>();
        if (Files.exists(file)) {
            for (String line : Files.readAllLines(file, StandardCharsets.UTF_8)) {
                String[] fields = line.split(",");
                done.add(fields[0] + "," + fields[1] + "," + fields[2] + ",");
            }
            return done;
        }
        List<String> columns = new ArrayList<>(List.of("world", "nursery", "player", "margin", "mothers"));
        for (Line line : Line.values()) {
            columns.add(line.name().toLowerCase(Locale.ROOT));
        }
        for (Units units : Units.values()) {
            columns.add("n_" + units.name().toLowerCase(Locale.ROOT));
        }
        append(file, String.join(",", columns));
        return done;
    }

    private static synchronized void append(Path file, String line) throws IOException {
        Files.writeString(
                file, line + "\n", StandardCharsets.UTF_8, StandardOpenOption.CREATE, StandardOpenOption.APPEND);
    }

    static String line(Result result) {
        StringBuilder line = new StringBuilder(key(result.world(), result.nursery(), result.player()));
        line.append(String.format(Locale.ROOT, "%.2f,%d", result.accounts().margin(), result.mothers()));
        for (Line one : Line.values()) {
            line.append(String.format(Locale.ROOT, ",%.2f", result.accounts().of(one)));
        }
        for (Units one : Units.values()) {
            line.append(',').append(result.accounts().of(one));
        }
        return line.toString();
    }
}
