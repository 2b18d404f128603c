package ortet.commands;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import ortet.figures.Comparison;
import ortet.figures.Count;
import ortet.figures.Followed;
import ortet.figures.Within;
import ortet.line.UsageException;
import ortet.line.Word;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;

/** Figures out of a file of anybody's own, by the code that reckons the book's. */
public final class FigureCommands {
    private static final String GROUP = "Figures";
    private static final Set<String> NO = Set.of("", "0", "no", "n", "false", "censored", "pending");
    private static final Set<String> YES = Set.of("1", "yes", "y", "true");

    /** How every answer is wanted. */
    record Wanted(
            @Option(
                    longName = "confidence",
                    defaultValue = "95",
                    description = "confidence of the intervals in percent")
            @Word("PERCENT")
            Confidence confidence,

            @Option(
                    longName = "explain",
                    description = "tell the method of each figure, where it is published, and what was read")
            boolean explain,

            @Option(longName = "format", defaultValue = "table", description = "how to answer")
            OutputFormat format) {
        double level() {
            return confidence.share();
        }
    }

    @Command(name = "figures compare", group = GROUP, description = "compare the rates of groups in a file", help = """
            The file is CSV with a header; every row has a count of successes, and of trials or failures. Every further group is
            held against the first one in the file, or --against. Rates have Wilson's interval, differences Newcombe's; with
            --cluster both allow for units of one tray or mother sharing their luck. docs/methods.md has the formulas.
            ortet figures compare plum.csv --successes alive --failures dead --group time --stratum length
            ortet figures compare trays.csv --successes taken --trials set --group method --cluster tray --explain
            """)
    void compare(
            @Argument(index = 0, description = "the file") @Word("FILE") Path file,
            @Option(longName = "successes", required = true, description = "column with how many succeeded")
                    @Word("COLUMN")
                    String successes,
            @Option(longName = "trials", description = "column with how many there were") @Word("COLUMN")
                    Optional<String> trials,
            @Option(longName = "failures", description = "column with how many failed") @Word("COLUMN")
                    Optional<String> failures,
            @Option(longName = "group", required = true, description = "column with the group") @Word("COLUMN")
                    String group,
            @Option(longName = "stratum", description = "column within whose values groups are compared")
                    @Word("COLUMN")
                    Optional<String> stratum,
            @Option(longName = "cluster", description = "column with the tray or mother whose units share their luck")
                    @Word("COLUMN")
                    Optional<String> cluster,
            @Option(
                            longName = "against",
                            description = "group that the others are held against; the first unless given")
                    @Word("GROUP")
                    Optional<String> against,
            Wanted wanted,
            Screen screen) {
        double level = wanted.level();
        if (trials.isEmpty() && failures.isEmpty()) {
            throw new UsageException("figures compare needs --trials COLUMN or --failures COLUMN");
        }
        FigureFile read = FigureFile.read(file);
        read.column("--successes", successes);
        trials.ifPresent(name -> read.column("--trials", name));
        failures.ifPresent(name -> read.column("--failures", name));
        read.column("--group", group);
        stratum.ifPresent(name -> read.column("--stratum", name));
        cluster.ifPresent(name -> read.column("--cluster", name));
        List<Comparison.Row> rows = read.each(row -> new Comparison.Row(
                row.name(group),
                stratum.map(row::name),
                cluster.map(row::name),
                count(row, successes, trials, failures)));
        Comparison comparison = Comparison.of(led(rows, against), level);
        List<String> inputs = new ArrayList<>();
        inputs.add(read.shown() + ", " + Counts.of(read.size(), "row", "rows"));
        inputs.add("successes " + successes
                + trials.map(name -> ", trials " + name).orElse("")
                + failures.map(name -> ", failures " + name).orElse("") + ", group " + group
                + stratum.map(name -> ", stratum " + name).orElse("")
                + cluster.map(name -> ", cluster " + name).orElse(""));
        String title = successes + " by " + group
                + stratum.map(name -> ", within " + name).orElse("");
        screen.page(out -> CompareView.show(comparison, level, title, wanted.explain(), inputs, wanted.format(), out));
    }

    private static Count count(
            FigureFile.Row row, String successes, Optional<String> trials, Optional<String> failures) {
        long succeeded = row.whole(successes);
        if (trials.isEmpty()) {
            return new Count(succeeded, succeeded + row.whole(failures.orElseThrow()));
        }
        long all = row.whole(trials.get());
        if (succeeded > all) {
            throw row.bad(successes, "expected at most the " + all + " of " + trials.get() + ", found " + succeeded);
        }
        failures.ifPresent(column -> {
            if (row.whole(column) != all - succeeded) {
                throw row.bad(
                        column,
                        "expected " + (all - succeeded) + ", which is " + trials.get() + " less " + successes
                                + ", found " + row.whole(column));
            }
        });
        return new Count(succeeded, all);
    }

    /** Put the group that leads first. */
    private static List<Comparison.Row> led(List<Comparison.Row> rows, Optional<String> against) {
        if (against.isEmpty()) {
            return rows;
        }
        Set<String> groups = new TreeSet<>();
        rows.forEach(row -> groups.add(row.group()));
        if (!groups.contains(against.get())) {
            throw new Refused(Fault.of("no-group", "no group " + against.get() + " for --against")
                    .nearest(Nearest.of(against.get(), groups)));
        }
        List<Comparison.Row> led = new ArrayList<>(
                rows.stream().filter(row -> row.group().equals(against.get())).toList());
        rows.stream().filter(row -> !row.group().equals(against.get())).forEach(led::add);
        return led;
    }

    @Command(
            name = "figures survival",
            group = GROUP,
            description = "tell how long things take, from a file",
            help = """
            The file is CSV with a header. Either --time is the time when it happened or when it was last looked for, and --event
            says whether it had (1 or yes; 0, no or nothing); or it happened after --left and up to --right, where an empty left is
            the start and an empty right is not yet. With --cause, --event says what happened (0 or nothing: not yet), and the
            answer is of that cause, which the others keep from happening. docs/methods/time.md has the formulas.
            ortet figures survival layers.csv --time days --event rooted --group wound
            ortet figures survival looks.csv --left left --right right --group wound --at 30,60,90
            ortet figures survival layers.csv --time days --event outcome --cause rooted --at 60,90
            """)
    void survival(
            @Argument(index = 0, description = "the file") @Word("FILE") Path file,
            @Option(longName = "time", description = "column with the time") @Word("COLUMN") Optional<String> time,
            @Option(longName = "left", description = "column with the last time before it happened") @Word("COLUMN")
                    Optional<String> left,
            @Option(longName = "right", description = "column with the first time after it happened") @Word("COLUMN")
                    Optional<String> right,
            @Option(longName = "event", description = "column that says whether it happened, or what did")
                    @Word("COLUMN")
                    Optional<String> event,
            @Option(longName = "cause", description = "which of the things that happened is asked about") @Word("CAUSE")
                    Optional<String> cause,
            @Option(longName = "group", description = "column with the group") @Word("COLUMN") Optional<String> group,
            @Option(longName = "at", description = "times at which to tell the share") @Word("TIME") List<Double> at,
            @Option(longName = "seed", defaultValue = "1", description = "seed of the bootstrap") long seed,
            Wanted wanted,
            Screen screen) {
        double level = wanted.level();
        if (time.isPresent() == (left.isPresent() || right.isPresent()) || left.isPresent() != right.isPresent()) {
            throw new UsageException("figures survival needs --time COLUMN, or --left COLUMN and --right COLUMN");
        }
        if (left.isPresent() && (event.isPresent() || cause.isPresent())) {
            throw new UsageException("--event and --cause of figures survival: only with --time");
        }
        if (cause.isPresent() && event.isEmpty()) {
            throw new UsageException("--cause of figures survival: only with --event");
        }
        FigureFile read = FigureFile.read(file);
        time.ifPresent(name -> read.column("--time", name));
        left.ifPresent(name -> read.column("--left", name));
        right.ifPresent(name -> read.column("--right", name));
        event.ifPresent(name -> read.column("--event", name));
        group.ifPresent(name -> read.column("--group", name));
        List<String> inputs = new ArrayList<>();
        inputs.add(read.shown() + ", " + Counts.of(read.size(), "row", "rows"));
        inputs.add(time.map(name -> "time " + name)
                        .orElseGet(() -> "after " + left.orElseThrow() + " up to " + right.orElseThrow())
                + event.map(name -> ", event " + name).orElse("")
                + cause.map(name -> ", cause " + name).orElse("")
                + group.map(name -> ", group " + name).orElse(""));
        SurvivalView view =
                new SurvivalView("time" + group.map(name -> " by " + name).orElse(""), level, at);
        if (left.isPresent()) {
            view.between(grouped(read, group, row -> between(row, left.get(), right.orElseThrow())), seed);
        } else if (cause.isPresent()) {
            List<String> causes = causes(read, event.orElseThrow(), cause.get());
            view.competing(
                    grouped(read, group, row -> followed(row, time.orElseThrow(), event, causes)), cause.get(), 1);
        } else {
            event.ifPresent(name -> refuseSeveralCauses(read, name));
            view.followed(grouped(read, group, row -> followed(row, time.orElseThrow(), event, List.of())));
        }
        screen.page(out -> view.show(wanted.explain(), inputs, wanted.format(), out));
    }

    private record Grouped<T>(String group, T one) {}

    private static <T> Map<String, List<T>> grouped(
            FigureFile file, Optional<String> group, Function<FigureFile.Row, T> made) {
        Map<String, List<T>> groups = new LinkedHashMap<>();
        file.each(row -> new Grouped<>(group.map(row::name).orElse("all"), made.apply(row)))
                .forEach(one -> groups.computeIfAbsent(one.group(), name -> new ArrayList<>())
                        .add(one.one()));
        return groups;
    }

    /** Return what happened, the cause asked for first. */
    private static List<String> causes(FigureFile file, String event, String cause) {
        Set<String> found = new TreeSet<>();
        file.each(row -> row.text(event)).stream()
                .filter(text -> !NO.contains(text.toLowerCase(Locale.ROOT)))
                .forEach(found::add);
        if (!found.contains(cause)) {
            throw new Refused(Fault.of(
                            "no-cause",
                            file.shown() + ": no " + cause + " under " + event + "; expected one of "
                                    + String.join(", ", found))
                    .nearest(Nearest.of(cause, found)));
        }
        List<String> causes = new ArrayList<>(List.of(cause));
        found.stream().filter(other -> !other.equals(cause)).forEach(causes::add);
        return causes;
    }

    /** Refuse words under --event that say more than whether it happened. */
    private static void refuseSeveralCauses(FigureFile file, String event) {
        Set<String> strange = new TreeSet<>();
        file.each(row -> row.text(event)).stream()
                .filter(text -> !NO.contains(text.toLowerCase(Locale.ROOT)))
                .filter(text -> !YES.contains(text.toLowerCase(Locale.ROOT)))
                .forEach(strange::add);
        if (!strange.isEmpty()) {
            throw new Refused(Fault.of(
                    "several-causes",
                    file.shown() + ": expected 1 or 0, yes or no under " + event + ", found "
                            + strange.stream()
                                    .limit(5)
                                    .map(word -> '"' + word + '"')
                                    .collect(Collectors.joining(", "))
                            + "; where several things may happen, name one with --cause"));
        }
    }

    private static Followed followed(FigureFile.Row row, String time, Optional<String> event, List<String> causes) {
        double when =
                row.number(time).orElseThrow(() -> row.bad(time, "expected a number of at least 0, found nothing"));
        if (event.isEmpty()) {
            return Followed.happened(when);
        }
        String text = row.text(event.get());
        String folded = text.toLowerCase(Locale.ROOT);
        if (NO.contains(folded)) {
            return Followed.censored(when);
        }
        if (!causes.isEmpty()) {
            return new Followed(when, 1 + causes.indexOf(text));
        }
        return Followed.happened(when);
    }

    private static Within between(FigureFile.Row row, String left, String right) {
        double after = row.number(left).orElse(0.0);
        double until = row.number(right).orElse(Double.POSITIVE_INFINITY);
        if (until < after) {
            throw row.bad(
                    right,
                    "expected nothing, or a time that is not before " + FigureSheet.plain(after) + " of " + left
                            + ", found " + FigureSheet.plain(until));
        }
        if (until == 0) {
            throw row.bad(right, "expected a time above 0, found 0");
        }
        return new Within(after, until);
    }
}
