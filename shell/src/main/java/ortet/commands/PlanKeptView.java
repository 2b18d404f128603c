package ortet.commands;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import ortet.book.UnitFacts.Method;
import ortet.choice.PlanKept;
import ortet.entry.Planned;
import ortet.entry.Words;
import ortet.screen.Column;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;
import ortet.screen.Sheet;

/** Shows plans that are kept, and how they stand. */
final class PlanKeptView {
    private PlanKeptView() {}

    static void show(List<PlanKept> plans, LocalDate day, boolean explain, OutputFormat format, Screen screen) {
        if (format != OutputFormat.TABLE) {
            screen.show(sheet(plans, day), format);
            return;
        }
        if (plans.isEmpty()) {
            screen.prose("no plan is kept as of " + day + "; \"help plan\" tells how to keep one");
            return;
        }
        boolean first = true;
        for (PlanKept kept : plans) {
            if (!first) {
                screen.println();
            }
            first = false;
            told(kept, screen);
        }
        if (explain) {
            screen.println();
            screen.hanging(
                    "",
                    "  ",
                    "Counted are all units of the cultivar and method that were set on the days of the plan, each for one plan:"
                            + " of plans alike in these the one kept first takes whole tags in the order of setting, up to its"
                            + " number, and what is beyond all counts for the last. What is pending or to be set passes every stage, what took the others, what has established the last; each stage is"
                            + " beta-binomial with a rate for this season, from earlier ones and from what is known of this one"
                            + " (docs/methods/plan.md).");
        }
    }

    private static void told(PlanKept kept, Screen screen) {
        Planned plan = kept.plan();
        Method method = Method.valueOf(plan.method().name());
        screen.headed("", "plan " + plan.name(), "  ", ", as of " + kept.asOf() + " (entry #" + kept.order() + ")");
        screen.hanging(
                "  ",
                "    ",
                plan.wanted() + " of " + plan.cultivar()
                        + plan.size().map(size -> ", " + size + ",").orElse("") + " by " + plan.wantedBy() + ", "
                        + plan.surePercent() + " % sure: " + PlanWords.units(method, plan.toSet()) + " to be "
                        + PlanWords.done(method) + " from " + plan.setFrom() + " to " + plan.setTo() + ", "
                        + plan.expected() + " trees expected");
        screen.hanging(
                "  ",
                "    ",
                "so far: " + kept.set() + " " + PlanWords.done(method) + ", of these " + kept.pending() + " pending, "
                        + kept.taken() + " taken, " + kept.failed() + " failed; " + kept.fit() + " fit for sale, "
                        + kept.growing() + " more growing on"
                        + (kept.toCome() > 0 ? "; " + kept.toCome() + " still to be " + PlanWords.done(method) : ""));
        kept.outlook()
                .ifPresent(outlook -> screen.hanging(
                        "  ",
                        "    ",
                        "in the end: " + PlanWords.decimal(outlook.expected()) + " expected ("
                                + Math.round(outlook.range().lower()) + " to "
                                + Math.round(outlook.range().upper()) + ", 90 %); " + plan.wanted()
                                + " or more with a chance of " + PlanWords.chance(outlook.chance()) + " %"));
        screen.hanging("  ", "    ", verdict(kept));
    }

    private static String verdict(PlanKept kept) {
        Planned plan = kept.plan();
        return switch (kept.state()) {
            case ON_COURSE -> "on course: as sure as planned";
            case MET ->
                (kept.isOver() ? "met: " : "met already: ") + kept.fit() + " fit for sale, " + plan.wanted()
                        + " wanted, " + plan.expected() + " expected when it was planned";
            case MISSED ->
                "missed: " + kept.fit() + " fit for sale by " + plan.wantedBy() + ", " + plan.wanted() + " wanted, "
                        + plan.expected() + " expected when it was planned";
            case NOT_KNOWN -> "whether it is on course cannot be told: the book does not tell enough of its like";
            case BEHIND ->
                "behind: less sure than the " + plan.surePercent() + " % planned"
                        + kept.outlook()
                                .flatMap(PlanKept.Outlook::more)
                                .map(more -> "; " + more + " more by " + plan.setTo() + " would mend it")
                                .orElse(
                                        kept.asOf().isAfter(plan.setTo().last())
                                                ? "; the days of setting are over"
                                                : "; however many more are set, it stays so");
        };
    }

    static void list(List<PlanKept> plans, LocalDate day, OutputFormat format, Screen screen) {
        if (plans.isEmpty() && format == OutputFormat.TABLE) {
            screen.prose("no plan is kept as of " + day + "; \"help plan\" tells how to keep one");
            return;
        }
        screen.show(sheet(plans, day), format);
    }

    private static Sheet sheet(List<PlanKept> plans, LocalDate day) {
        Sheet.Builder sheet = Sheet.titled(
                "plans kept, as of " + day,
                Column.text("name", "name"),
                Column.text("order", "for").forPeople(),
                Column.text("cultivar", "cultivar").forPrograms(),
                Column.text("method", "method").forPrograms(),
                Column.whole("wanted", "wanted").forPrograms(),
                Column.text("wanted_by", "by").forPrograms(),
                Column.number("sure_percent", "sure (%)", 1).forPrograms(),
                Column.text("size", "size").forPrograms(),
                Column.whole("to_set", "plan"),
                Column.text("set_from", "set from").forPrograms(),
                Column.text("set_to", "set to").forPrograms(),
                Column.number("expected_then", "expected when planned", 1).forPrograms(),
                Column.whole("set", "set"),
                Column.whole("pending", "pend."),
                Column.whole("taken", "taken").forPrograms(),
                Column.whole("failed", "failed").forPrograms(),
                Column.whole("fit", "fit"),
                Column.whole("growing", "growing").forPrograms(),
                Column.whole("to_come", "still to set").forPrograms(),
                Column.number("expected", "exp.", 1),
                Column.number("expected_lower", "expected lower", 0).forPrograms(),
                Column.number("expected_upper", "expected upper", 0).forPrograms(),
                Column.share("chance", "chance", 1),
                Column.whole("more_to_set", "more to set").forPrograms(),
                Column.text("state", "stands"),
                Column.whole("entry", "entry").forPrograms());
        for (PlanKept kept : plans) {
            Planned plan = kept.plan();
            Optional<PlanKept.Outlook> outlook = kept.outlook();
            sheet.row(
                    plan.name(),
                    plan.wanted() + " of " + plan.cultivar()
                            + plan.size().map(size -> ", " + size).orElse("") + " by " + plan.wantedBy() + ", "
                            + Words.of(plan.method()),
                    plan.cultivar().toString(),
                    Words.of(plan.method()),
                    plan.wanted(),
                    plan.wantedBy().toString(),
                    plan.surePercent().value(),
                    plan.size(),
                    plan.toSet(),
                    plan.setFrom().toString(),
                    plan.setTo().toString(),
                    plan.expected().value(),
                    kept.set(),
                    kept.pending(),
                    kept.taken(),
                    kept.failed(),
                    kept.fit(),
                    kept.growing(),
                    kept.toCome(),
                    outlook.map(PlanKept.Outlook::expected),
                    outlook.map(one -> one.range().lower()),
                    outlook.map(one -> one.range().upper()),
                    outlook.map(PlanKept.Outlook::chance),
                    outlook.flatMap(PlanKept.Outlook::more),
                    Words.of(kept.state()).replace('-', ' '),
                    kept.order());
        }
        return sheet.build();
    }
}
