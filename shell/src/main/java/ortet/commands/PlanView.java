package ortet.commands;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.apache.commons.numbers.fraction.BigFraction;
import ortet.book.UnitFacts.Method;
import ortet.choice.Plan;
import ortet.choice.Plan.Answer;
import ortet.choice.Plan.Shortfall;
import ortet.choice.PlanCost;
import ortet.choice.PlanMother;
import ortet.choice.PlanOrders;
import ortet.choice.PlanQuestion;
import ortet.choice.PlanStage;
import ortet.choice.PlanStage.Lean;
import ortet.choice.PlanStage.Spread;
import ortet.choice.PlanWeeks;
import ortet.choice.Plans;
import ortet.entry.Words;
import ortet.money.Cost;
import ortet.money.Total;
import ortet.plant.Tag;
import ortet.screen.Column;
import ortet.screen.Json;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;
import ortet.screen.Sheet;

/** Shows plans: what to set, where, when, at what cost, and how sure that is. */
final class PlanView {
    private static final int FIFTH = 5;
    private static final int ABSURD = 10;
    private static final double NEARLY_ALL = 0.8;
    private static final int PERCENT = 100;
    private static final int HOURS_DIGITS = 1;
    private static final int FINE = 6;
    private static final String DASH = "–";

    private PlanView() {}

    static void show(Plans plans, boolean explain, OutputFormat format, Screen screen) {
        switch (format) {
            case TABLE -> {
                if (plans.all().size() == 1) {
                    told(plans.all().get(0), explain, screen);
                } else {
                    screen.show(compared(plans, explain), format);
                }
            }
            case CSV -> screen.show(compared(plans, explain), format);
            case JSON ->
                screen.json(json -> json.object(document -> {
                    question(plans.question(), document);
                    document.array("plans", all -> plans.all().forEach(plan -> all.object(one -> json(plan, one))));
                }));
        }
    }

    // ---- one plan for people ----

    private static String title(PlanQuestion question, List<String> cultivars) {
        String what = cultivars.size() == 1 ? cultivars.get(0) : question.cultivar();
        return "plan: " + question.wanted() + " of " + what
                + question.size().map(size -> ", " + size + ",").orElse("") + " fit for sale by " + question.by() + ", "
                + PlanWords.chance(question.sure()) + " % sure, as of " + question.asOf();
    }

    private static void told(Plan plan, boolean explain, Screen screen) {
        screen.headed("", title(plan.question(), plan.cultivars()), "  ", "");
        screen.println();
        plan.answer().ifPresent(answer -> answer(plan, answer, screen));
        plan.shortfall()
                .ifPresent(shortfall -> shortfall(plan, shortfall).forEach(line -> screen.hanging("", "  ", line)));
        if (!plan.stages().isEmpty()) {
            screen.println();
            stages(plan, screen);
        }
        boolean isUsed = plan.mothers().stream().anyMatch(mother -> mother.use() > 0);
        if (isUsed) {
            screen.println();
            mothers(plan, screen);
        }
        List<String> remarks = remarks(plan);
        if (!remarks.isEmpty()) {
            screen.println();
            remarks.forEach(line -> screen.hanging("", "  ", line));
        }
        if (explain) {
            screen.println();
            explanations(plan).forEach(line -> screen.hanging("", "  ", line));
        }
    }

    private static void answer(Plan plan, Answer answer, Screen screen) {
        PlanQuestion question = plan.question();
        screen.hanging(
                "",
                "  ",
                PlanWords.act(plan.method()) + " " + PlanWords.units(plan.method(), answer.toSet()) + ", "
                        + PlanWords.between(answer.from(), answer.to()) + ".");
        screen.hanging(
                "",
                "  ",
                "Then " + question.wanted() + " or more are fit for sale by " + answer.fitBy() + " with a chance of "
                        + PlanWords.chance(answer.chance()) + " %. Expected: "
                        + PlanWords.decimal(answer.expected()) + " ("
                        + Math.round(answer.range().lower()) + " to "
                        + Math.round(answer.range().upper()) + ", 90 %).");
        answer.ready()
                .ifPresent(ready -> screen.hanging(
                        "",
                        "  ",
                        PlanWords.ready(plan.method()) + " from "
                                + ready.first()
                                + ready.last().map(last -> " to " + last).orElse(", some of them much later")
                                + " (half after " + Math.round(ready.days()) + " days; " + ready.happened()
                                + " known, of "
                                + PlanWords.lean(ready.lean()) + ")."));
        screen.hanging("", "  ", cost(answer.cost()));
    }

    private static String cost(PlanCost cost) {
        String materials = cost.lines().stream()
                .filter(PlanCost.Line::isMaterial)
                .map(line -> Math.round(line.units()) + " × " + line.charge().what())
                .distinct()
                .collect(Collectors.joining(", "));
        return "Material: " + (materials.isEmpty() ? DASH : materials) + ". Hours: " + hours(cost.total()) + ". Cost: "
                + price(cost.total())
                + (cost.missing().isEmpty() ? "" : ", without what has no price: " + String.join("; ", cost.missing()))
                + ".";
    }

    private static String hours(Total total) {
        return total.hours().signum() == 0
                ? DASH
                : decimal(total.hours(), HOURS_DIGITS).toPlainString();
    }

    private static String price(Total total) {
        return total.cost().map(Cost::toString).orElse(DASH);
    }

    private static BigDecimal decimal(BigFraction value, int digits) {
        return value.bigDecimalValue(digits, RoundingMode.HALF_EVEN);
    }

    private static List<String> shortfall(Plan plan, Shortfall shortfall) {
        List<String> lines = new ArrayList<>();
        PlanQuestion question = plan.question();
        String sure = PlanWords.chance(question.sure()) + " %";
        String method = PlanWords.units(plan.method(), 2).substring(2);
        switch (shortfall.why()) {
            case NOT_KNOWN -> {
                lines.add("This cannot be planned by " + method + ": the book does not tell "
                        + (plan.set() == 0 ? "of any that were ever set of it, nor enough of others" : "enough of them")
                        + " to say what takes, establishes and becomes fit for sale, and when.");
                lines.add("Nearest: set a few for a trial, and write down what becomes of them.");
            }
            case TOO_LATE ->
                lines.add("This cannot be met by " + method + ": it is too late. Nothing set from "
                        + question.asOf() + " on in the usual weeks"
                        + plan.weeks()
                                .map(weeks -> " (" + PlanWords.between(weeks.from(), weeks.to()) + ")")
                                .orElse("")
                        + " was ever fit for sale so soon.");
            case POSITIONS -> lines.add("This cannot be met by " + method + ": " + needed(shortfall));
            case MEANS ->
                lines.add("This cannot be met by " + method + ": there are too few "
                        + shortfall.binds().orElse("hours or m²") + " for the "
                        + shortfall.needed().orElseThrow() + " that would have to be "
                        + PlanWords.done(plan.method()) + ".");
            case NOT_SO_SURE ->
                lines.add("This cannot be met by " + method + ": however many are set, "
                        + question.wanted() + " by that day are not " + sure + " sure"
                        + shortfall
                                .positions()
                                .map(free -> " (" + free + " positions are free)")
                                .orElse("") + ".");
        }
        List<String> nearest = new ArrayList<>();
        shortfall
                .most()
                .filter(most -> shortfall.why() != Plan.Why.NOT_KNOWN)
                .ifPresent(most -> nearest.add((most == 0 ? "none" : Integer.toString(most)) + " by " + question.by()
                        + ", " + sure + " sure"));
        shortfall
                .likely()
                .filter(likely -> likely > shortfall.most().orElse(0))
                .ifPresent(likely -> nearest.add(likely + " by " + question.by() + ", as likely as not"));
        shortfall.soonest().ifPresent(day -> nearest.add(question.wanted() + " by " + day + ", " + sure + " sure"));
        shortfall
                .chance()
                .filter(chance -> chance > 0)
                .map(PlanWords::chance)
                .map(chance -> chance.equals(PlanWords.chance(question.sure())) ? "not quite " + chance : chance)
                .ifPresent(
                        chance -> nearest.add(question.wanted() + " by " + question.by() + ", " + chance + " % sure"));
        if (!nearest.isEmpty()) {
            lines.add("Nearest that can: " + String.join("; or ", nearest) + "."
                    + ((shortfall.soonest().isPresent()
                                            || shortfall
                                                    .most()
                                                    .filter(most -> most > 0)
                                                    .isPresent())
                                    && shortfall
                                            .positions()
                                            .filter(free -> free > 0)
                                            .isPresent()
                                    && shortfall.from().isPresent()
                            ? " All with every free position used, set "
                                    + PlanWords.between(
                                            shortfall.from().get(),
                                            shortfall.to().orElseThrow()) + "."
                            : ""));
        }
        if (shortfall.why() != Plan.Why.NOT_KNOWN && shortfall.soonest().isEmpty()) {
            lines.add("By what day it could be met the book does not tell"
                    + (shortfall.positions().isPresent() ? "; it would take more mothers or positions." : "."));
        }
        return lines;
    }

    /** Return what is needed beside what is there; a number that nobody could set is not told as if somebody might. */
    private static String needed(Shortfall shortfall) {
        int needed = shortfall.needed().orElseThrow();
        int free = shortfall.positions().orElseThrow();
        String there = free == 0 ? "none are free" : free == 1 ? "1 is free" : free + " are free";
        return needed <= Math.max(1, free) * ABSURD
                ? needed + " positions are needed, " + there + "."
                : there + ", and more than " + ABSURD + " times as many positions would be needed to be so sure.";
    }

    private static String stage(PlanStage stage, Plan plan) {
        return switch (stage.kind()) {
            case TAKE -> "take, of those " + PlanWords.done(plan.method());
            case ESTABLISH -> "establish, of those";
            case FIT -> "fit for sale in time, of those";
        };
    }

    private static void stages(Plan plan, Screen screen) {
        Sheet.Builder sheet = Sheet.titled(
                "",
                Column.text("stage", "stage"),
                Column.text("own", "of known"),
                Column.whole("seasons", "seasons"),
                Column.text("lean", "leans also on"),
                Column.text("rate", "in a season to come %"));
        for (PlanStage stage : plan.stages()) {
            sheet.row(
                    stage(stage, plan),
                    stage.own().trials() == 0 ? DASH : stage.own().toString(),
                    stage.seasons(),
                    stage.lean() == Lean.OWN ? DASH : leaning(stage),
                    rate(stage));
        }
        screen.show(sheet.build(), OutputFormat.TABLE);
    }

    private static String leaning(PlanStage stage) {
        return (stage.lean() == Lean.TAXON
                ? stage.others() + " of its botanical name"
                : stage.others() + " other cultivars");
    }

    private static String rate(PlanStage stage) {
        return TakeView.percent(stage.rate()) + " ("
                + TakeView.percent(stage.interval().lower()) + " to "
                + TakeView.percent(stage.interval().upper()) + ")";
    }

    private static void mothers(Plan plan, Screen screen) {
        boolean isLayer = plan.method() == Method.LAYER;
        Sheet.Builder sheet = isLayer
                ? Sheet.titled(
                        "",
                        Column.text("mother", "mother"),
                        Column.text("pooled", "pooled %"),
                        Column.whole("use", "set"),
                        Column.text("where", "on stems of (mm)"),
                        Column.whole("free", "free"),
                        Column.text("measured", "counted"))
                : Sheet.titled(
                        "",
                        Column.text("mother", "mother"),
                        Column.text("pooled", "pooled %"),
                        Column.whole("use", PlanWords.done(plan.method())),
                        Column.whole("most", "most in a season so far"));
        for (PlanMother mother : plan.mothers()) {
            if (mother.use() == 0) {
                continue;
            }
            String pooled = mother.rate().map(PooledView::rate).orElse(DASH);
            if (isLayer) {
                sheet.row(
                        mother.tag().text(),
                        pooled,
                        mother.use(),
                        where(mother),
                        mother.free(),
                        mother.measured().map(Object::toString));
            } else {
                sheet.row(mother.tag().text(), pooled, mother.use(), mother.most());
            }
        }
        screen.show(sheet.build(), OutputFormat.TABLE);
    }

    private static String where(PlanMother mother) {
        return mother.positions().stream()
                .filter(position -> position.use() > 0)
                .map(position -> position.use() + " × " + position.lowMm() + "–" + position.highMm())
                .collect(Collectors.joining(", "));
    }

    /** Return what a reader must know of a plan: what it leans on, what is left out, what is much in doubt. */
    private static List<String> remarks(Plan plan) {
        List<String> lines = new ArrayList<>();
        for (PlanStage stage : plan.stages()) {
            if (stage.lean() != Lean.OWN) {
                lines.add("Of " + PlanWords.howMany(stage.kind()) + ", "
                        + (stage.own().trials() == 0
                                ? "nothing is known of its own"
                                : "too little is known of its own (" + stage.own() + ")")
                        + ": it leans on " + leaning(stage) + " (" + stage.helped() + ").");
            }
            if (stage.source() == Spread.UNTOLD) {
                lines.add("How much seasons differ in " + PlanWords.howMany(stage.kind())
                        + " cannot be told yet: the chance allows for no bad season, and is too good.");
            }
        }
        plan.weeks()
                .filter(weeks -> weeks.lean() != Lean.OWN)
                .ifPresent(weeks -> lines.add("The weeks are those of " + PlanWords.lean(weeks.lean())
                        + ": of its own too little was set to tell them."));
        if (plan.pending() > 0 && plan.pending() * FIFTH > plan.set()) {
            lines.add("warning: " + plan.pending() + " of " + plan.set()
                    + " are pending, more than a fifth; what takes may look other than it is.");
        }
        int shared = plan.mothers().stream().mapToInt(PlanMother::use).sum();
        plan.answer()
                .filter(answer -> shared < answer.toSet())
                .ifPresent(answer -> lines.add(
                        (shared == 0
                                ? "From which mothers is not told: from none was anything taken by this method."
                                : "From these mothers no more than " + shared
                                        + " were ever taken in one season, each at her most; where the other "
                                        + (answer.toSet() - shared) + " come from is yours to say.")));
        if (plan.method() == Method.LAYER) {
            String none = plan.mothers().stream()
                    .filter(mother -> mother.free() == 0)
                    .map(mother -> mother.tag().text())
                    .collect(Collectors.joining(", "));
            if (!none.isEmpty()) {
                lines.add("No position free: " + none + ".");
            }
            LocalDate lately = plan.question().asOf().minusYears(1);
            String old = plan.mothers().stream()
                    .filter(mother -> mother.measured()
                            .filter(day -> day.last().isBefore(lately))
                            .isPresent())
                    .map(mother -> mother.tag() + " " + mother.measured().orElseThrow())
                    .collect(Collectors.joining(", "));
            if (!old.isEmpty()) {
                lines.add("Counted more than a year ago: " + old
                        + "; since then branches have grown and been lost, so count again.");
            }
        }
        Map<PlanMother.Why, List<Tag>> leftOut = new LinkedHashMap<>();
        plan.leftOut()
                .forEach(one -> leftOut.computeIfAbsent(one.why(), why -> new ArrayList<>())
                        .add(one.tag()));
        leftOut.forEach((why, tags) -> lines.add("Left out: "
                + tags.stream().map(Tag::text).collect(Collectors.joining(", ")) + ", " + reason(why) + "."));
        return lines;
    }

    private static String reason(PlanMother.Why why) {
        return switch (why) {
            case HELD -> "held for plant health";
            case RESERVED -> "reserved";
            case PROTECTED ->
                "protected, with no licence in the book; propagating it without the right holder's licence can be unlawful";
            case NOT_COUNTED -> "nobody has counted positions (measure TAG --positions 8-12:5)";
        };
    }

    private static List<String> explanations(Plan plan) {
        List<String> lines = new ArrayList<>();
        for (PlanStage stage : plan.stages()) {
            lines.add(stage(stage, plan) + ": of its own " + (stage.own().trials() == 0 ? "nothing" : stage.own())
                    + " in "
                    + Counts.of(stage.seasons(), "season", "seasons")
                    + (stage.lean() == Lean.OWN ? "" : "; and " + leaning(stage) + ", " + stage.helped())
                    + ". Correlation of two of one season "
                    + String.format(Locale.ROOT, "%.3f", stage.correlation()) + ", "
                    + (stage.source() == Spread.UNTOLD
                            ? "not told by any seasons"
                            : "from " + stage.degrees() + " seasons more than cultivars, of "
                                    + switch (stage.source()) {
                                        case OWN -> "its own";
                                        case TAXON -> "its botanical name";
                                        case ALL, UNTOLD -> "all cultivars";
                                    })
                    + "; rate of a season to come Beta("
                    + String.format(Locale.ROOT, "%.2f", stage.shapes().alpha())
                    + ", "
                    + String.format(Locale.ROOT, "%.2f", stage.shapes().beta()) + ").");
        }
        plan.answer()
                .ifPresent(answer -> lines.add("One less would be enough with a chance of "
                        + String.format(Locale.ROOT, "%.2f", PERCENT * answer.chanceOfOneLess()) + " %."));
        if (!plan.stages().isEmpty()) {
            lines.add(
                    "The number: the smallest n for which enough of n pass all stages, each beta-binomial given the one before,"
                            + " its rate one draw for the whole season (Skellam 1948, J. R. Stat. Soc. B 10:257; correlation: Ridout,"
                            + " Demétrio & Firth 1999, Biometrics 55:137). Exact sums, no simulation; docs/methods/plan.md.");
        }
        plan.weeks()
                .ifPresent(weeks -> lines.add(
                        "The weeks: between the days by which one in ten and nine in ten units had been set in"
                                + " a year, " + PlanWords.between(weeks.from(), weeks.to()) + ", from " + weeks.days()
                                + " days of setting of " + PlanWords.lean(weeks.lean()) + "."));
        plan.answer()
                .ifPresent(answer ->
                        lines.add("Expected: " + answer.toSet() + " × the product of the three rates; its range and"
                                + " the chance are of one and the same distribution. Material of pots: the first pot, and its place, of"
                                + " most of the 20 tags set last that took."));
        plan.shortfall()
                .ifPresent(shortfall ->
                        lines.add("Nearest: the most that can be had as sure as asked, and as likely as not, with"
                                + " what there is; the chance of as many as asked with all of it; the first day by which they could be"
                                + " had, set in one of the next three years."));
        lines.add("Mothers: in the order of the lower limits of what to expect of them by this method (pooled, 90 %);"
                + " docs/methods/mothers.md. Positions: as counted last, less layers set since, and those pending.");
        plan.answer()
                .ifPresent(answer -> answer.cost()
                        .lines()
                        .forEach(line -> lines.add("Cost: "
                                + PlanWords.decimal(line.units()) + " × "
                                + line.charge().what() + ": "
                                + (line.charge().isPriced()
                                        ? line.charge().how()
                                                + line.charge().sources().stream()
                                                        .map(order -> "#" + order)
                                                        .collect(Collectors.joining(", ", " (listed in ", ")"))
                                        : line.charge().missing().orElse(DASH)))));
        return lines;
    }

    // ---- several ----

    private static Sheet compared(Plans plans, boolean explain) {
        Sheet.Builder sheet = Sheet.titled(
                title(plans.question(), plans.all().get(0).cultivars()),
                Column.text("method", "method"),
                Column.truth("can", "can be met").forPrograms(),
                Column.whole("to_set", "to set"),
                Column.share("chance", "chance", 1),
                Column.share("chance_of_one_less", "chance of one less", 1).forPrograms(),
                Column.number("expected", "expected", 1),
                Column.number("expected_lower", "expected lower", 0).forPrograms(),
                Column.number("expected_upper", "expected upper", 0).forPrograms(),
                Column.text("when", "set").forPeople(),
                Column.day("set_from", "set from").forPrograms(),
                Column.day("set_to", "set to").forPrograms(),
                Column.day("fit_by", "saleable by"),
                Column.number("hours", "hours", 1),
                Column.text("cost_shown", "cost").forPeople(),
                Column.number("cost", "cost", 2).forPrograms(),
                Column.text("currency", "currency").forPrograms(),
                Column.whole("not_priced", "not priced").forPrograms(),
                Column.text("why", "why not").forPrograms(),
                Column.whole("positions", "positions free").forPrograms(),
                Column.whole("needed", "needed").forPrograms(),
                Column.whole("most", "most that can").forPrograms(),
                Column.whole("likely", "as likely as not").forPrograms(),
                Column.share("chance_as_is", "chance of as many as asked", 1).forPrograms(),
                Column.day("soonest", "soonest").forPrograms());
        for (Plan plan : plans.all()) {
            Optional<Answer> answer = plan.answer();
            Optional<Shortfall> shortfall = plan.shortfall();
            Optional<Total> total = answer.map(one -> one.cost().total());
            sheet.row(
                    Words.of(plan.method()),
                    answer.isPresent(),
                    answer.map(Answer::toSet),
                    answer.map(Answer::chance),
                    answer.map(Answer::chanceOfOneLess),
                    answer.map(Answer::expected),
                    answer.map(one -> one.range().lower()),
                    answer.map(one -> one.range().upper()),
                    answer.map(one -> one.from() + " to " + one.to()).orElse("cannot be met"),
                    answer.map(Answer::from),
                    answer.map(Answer::to),
                    answer.map(Answer::fitBy),
                    total.filter(one -> one.hours().signum() > 0).map(one -> decimal(one.hours(), FINE)),
                    total.map(PlanView::price).orElse(DASH)
                            + (total.filter(one -> one.notPriced() > 0).isPresent() ? " +" : ""),
                    total.flatMap(Total::cost).map(Cost::fine),
                    total.flatMap(Total::cost).map(cost -> cost.currency().getCurrencyCode()),
                    total.map(Total::notPriced),
                    shortfall.map(one -> Words.of(one.why())),
                    shortfall.flatMap(Shortfall::positions),
                    shortfall.flatMap(Shortfall::needed),
                    shortfall.flatMap(Shortfall::most),
                    shortfall.flatMap(Shortfall::likely),
                    shortfall.flatMap(Shortfall::chance),
                    shortfall.flatMap(Shortfall::soonest));
        }
        sheet.note(
                "chance: that enough are fit for sale by the day, a bad season allowed for; expected: how many on average."
                        + " With --method one of them is told in full: mothers, positions, and what each number rests on");
        boolean isWithout = plans.all().stream()
                .flatMap(plan -> plan.answer().stream())
                .anyMatch(answer -> answer.cost().total().notPriced() > 0);
        if (isWithout) {
            sheet.note("+: and what has no cost listed; --method tells what that is");
        }
        for (Plan plan : plans.all()) {
            String who = Words.of(plan.method()) + ": ";
            plan.shortfall().ifPresent(one -> sheet.note(who + String.join(" ", shortfall(plan, one))));
            remarks(plan).stream()
                    .filter(line -> !line.startsWith("Left out")
                            && !line.startsWith("From")
                            && !line.startsWith("No position")
                            && !line.startsWith("Counted"))
                    .forEach(line -> sheet.note(who + line));
            if (explain) {
                explanations(plan).forEach(line -> sheet.note(who + line));
            }
        }
        return sheet.build();
    }

    // ---- orders ----

    private static String name(Plan plan) {
        return plan.cultivars().size() == 1
                ? plan.cultivars().get(0)
                : plan.question().cultivar();
    }

    static void orders(PlanOrders orders, LocalDate asOf, boolean explain, OutputFormat format, Screen screen) {
        if (format == OutputFormat.JSON) {
            screen.json(json -> json.object(document -> {
                document.field("as_of", asOf);
                document.array(
                        "orders",
                        all -> orders.filled()
                                .forEach(filled -> all.object(one -> {
                                    one.field("line", filled.order().where().line());
                                    question(filled.order().question(), one);
                                    one.field("can_be_had", filled.had());
                                    one.field("missing", filled.missing());
                                    one.object("plan", plan -> json(filled.plan(), plan));
                                })));
                document.object("total", total -> total(orders.total(), total));
                document.array(
                        "uses",
                        uses -> orders.uses()
                                .forEach(use -> uses.object(one -> one.field("what", use.what())
                                        .field("used", use.used())
                                        .field("available", use.available()))));
            }));
            return;
        }
        Sheet.Builder sheet = Sheet.titled(
                "plans for " + Counts.of(orders.filled().size(), "order", "orders") + ", as of " + asOf,
                Column.whole("line", "line"),
                Column.text("order", "order").forPeople(),
                Column.text("cultivar", "cultivar").forPrograms(),
                Column.whole("wanted", "wanted").forPrograms(),
                Column.day("by", "by").forPrograms(),
                Column.text("size", "size").forPrograms(),
                Column.share("sure", "sure", 1).forPrograms(),
                Column.text("method", "method"),
                Column.whole("to_set", "to set"),
                Column.share("chance", "chance", 1),
                Column.day("set_from", "set from").forPrograms(),
                Column.day("set_to", "set to").forPrograms(),
                Column.day("fit_by", "saleable by").forPrograms(),
                Column.whole("can_be_had", "had"),
                Column.whole("missing", "missing"),
                Column.number("hours", "hours", 1).forPrograms(),
                Column.number("cost", "cost", 2).forPrograms(),
                Column.text("currency", "currency").forPrograms());
        for (PlanOrders.Filled filled : orders.filled()) {
            PlanQuestion question = filled.order().question();
            Plan plan = filled.plan();
            Optional<Answer> answer = plan.answer();
            Optional<Total> total = answer.map(one -> one.cost().total());
            int used = plan.mothers().stream().mapToInt(PlanMother::use).sum();
            sheet.row(
                    filled.order().where().line(),
                    question.wanted() + " of " + name(plan)
                            + question.size().map(size -> ", " + size).orElse("") + " by " + question.by(),
                    name(plan),
                    question.wanted(),
                    question.by(),
                    question.size(),
                    question.sure(),
                    Words.of(plan.method()),
                    answer.map(Answer::toSet).or(() -> used > 0 ? Optional.of(used) : Optional.empty()),
                    answer.map(Answer::chance).or(() -> plan.shortfall().flatMap(Shortfall::chance)),
                    answer.map(Answer::from).or(() -> plan.shortfall().flatMap(Shortfall::from)),
                    answer.map(Answer::to).or(() -> plan.shortfall().flatMap(Shortfall::to)),
                    answer.map(Answer::fitBy),
                    filled.had(),
                    filled.missing(),
                    total.filter(one -> one.hours().signum() > 0).map(one -> decimal(one.hours(), FINE)),
                    total.flatMap(Total::cost).map(Cost::fine),
                    total.flatMap(Total::cost).map(cost -> cost.currency().getCurrencyCode()));
        }
        sheet.note(
                "the first day is served first; positions that one order uses are gone for the next. had: how many can be had"
                        + " as sure as asked; missing: how many not");
        sheet.note("together, for those that can be met: " + hours(orders.total()) + " hours, " + price(orders.total())
                + (orders.total().notPriced() > 0 ? " and what has no cost listed" : "")
                + (orders.uses().isEmpty()
                        ? "; hours and benches are added up, not limited (--limits FILE tells what there is)"
                        : ""));
        String full = orders.uses().stream()
                .filter(use -> use.used() >= NEARLY_ALL * use.available())
                .map(use -> use.what() + " " + hundredths(use.used()) + " of " + hundredths(use.available()))
                .collect(Collectors.joining("; "));
        if (!orders.uses().isEmpty()) {
            sheet.note(full.isEmpty() ? "hours and room: nowhere four fifths are used" : "nearly used up: " + full);
        }
        for (PlanOrders.Filled filled : orders.filled()) {
            String who = "line " + filled.order().where().line() + ": ";
            filled.plan()
                    .shortfall()
                    .ifPresent(one -> sheet.warning(who + String.join(" ", shortfall(filled.plan(), one))));
            if (explain) {
                remarks(filled.plan()).forEach(line -> sheet.note(who + line));
                explanations(filled.plan()).forEach(line -> sheet.note(who + line));
            }
        }
        screen.show(sheet.build(), format);
    }

    private static String hundredths(double value) {
        return BigDecimal.valueOf(value)
                .setScale(2, RoundingMode.HALF_EVEN)
                .stripTrailingZeros()
                .toPlainString();
    }

    // ---- JSON ----

    private static void question(PlanQuestion question, Json json) {
        json.field("cultivar", question.cultivar())
                .field("wanted", question.wanted())
                .field("by", question.by())
                .field("sure", question.sure())
                .field("size", question.size())
                .field("as_of", question.asOf());
    }

    private static void total(Total total, Json json) {
        json.field("hours", decimal(total.hours(), FINE))
                .field("m2_years", decimal(total.m2Years(), FINE))
                .field("amount", total.cost().map(Cost::fine))
                .field("currency", total.cost().map(cost -> cost.currency().getCurrencyCode()))
                .field("not_priced", total.notPriced());
    }

    private static void json(Plan plan, Json json) {
        json.array("cultivars", names -> plan.cultivars().forEach(names::value))
                .field("method", Words.of(plan.method()))
                .field("set", plan.set())
                .field("pending", plan.pending());
        json.array(
                "stages",
                stages -> plan.stages()
                        .forEach(stage -> stages.object(one -> one.field("stage", Words.of(stage.kind()))
                                .field("successes", stage.own().successes())
                                .field("known", stage.own().trials())
                                .field("seasons", stage.seasons())
                                .field("leans_on", Words.of(stage.lean()))
                                .field("others", stage.others())
                                .field("others_successes", stage.helped().successes())
                                .field("others_known", stage.helped().trials())
                                .field("correlation", stage.correlation())
                                .field("correlation_from", Words.of(stage.source()))
                                .field("correlation_degrees", stage.degrees())
                                .field("alpha", stage.shapes().alpha())
                                .field("beta", stage.shapes().beta())
                                .field("rate", stage.rate())
                                .field("lower", stage.interval().lower())
                                .field("upper", stage.interval().upper()))));
        plan.weeks()
                .ifPresentOrElse(
                        weeks -> json.object("weeks", one -> weeks(weeks, one)),
                        () -> json.field("weeks", Optional.empty()));
        plan.answer()
                .ifPresentOrElse(
                        answer -> json.object("answer", one -> answer(answer, one)),
                        () -> json.field("answer", Optional.empty()));
        plan.shortfall()
                .ifPresentOrElse(
                        shortfall -> json.object(
                                "shortfall",
                                one -> one.field("why", Words.of(shortfall.why()))
                                        .field("positions", shortfall.positions())
                                        .field("needed", shortfall.needed())
                                        .field("most", shortfall.most())
                                        .field("likely", shortfall.likely())
                                        .field("chance", shortfall.chance())
                                        .field("binds", shortfall.binds())
                                        .field("soonest", shortfall.soonest())
                                        .field("set_from", shortfall.from())
                                        .field("set_to", shortfall.to())),
                        () -> json.field("shortfall", Optional.empty()));
        json.array(
                "mothers",
                mothers -> plan.mothers()
                        .forEach(mother -> mothers.object(one -> one.field(
                                        "tag", mother.tag().text())
                                .field("use", mother.use())
                                .field("pooled_rate", mother.rate().map(rate -> rate.rate()))
                                .field(
                                        "pooled_lower",
                                        mother.rate()
                                                .map(rate -> rate.interval().lower()))
                                .field(
                                        "pooled_upper",
                                        mother.rate()
                                                .map(rate -> rate.interval().upper()))
                                .field("most_in_a_season", mother.most())
                                .field("counted", mother.measured().map(Object::toString))
                                .array(
                                        "positions",
                                        positions -> mother.positions()
                                                .forEach(position -> positions.object(band -> band.field(
                                                                "low_mm",
                                                                position.lowMm().value())
                                                        .field(
                                                                "high_mm",
                                                                position.highMm()
                                                                        .value())
                                                        .field("free", position.free())
                                                        .field("use", position.use())))))));
        json.array(
                "left_out",
                leftOut -> plan.leftOut()
                        .forEach(one -> leftOut.object(
                                fields -> fields.field("tag", one.tag().text()).field("why", Words.of(one.why())))));
        json.array("remarks", remarks -> remarks(plan).forEach(remarks::value));
    }

    private static void weeks(PlanWeeks weeks, Json json) {
        json.field("from", weeks.from().toString().substring(2))
                .field("to", weeks.to().toString().substring(2))
                .field("leans_on", Words.of(weeks.lean()))
                .field("days", weeks.days());
    }

    private static void answer(Answer answer, Json json) {
        json.field("to_set", answer.toSet())
                .field("chance", answer.chance())
                .field("chance_of_one_less", answer.chanceOfOneLess())
                .field("expected", answer.expected())
                .field("expected_lower", answer.range().lower())
                .field("expected_upper", answer.range().upper())
                .field("set_from", answer.from())
                .field("set_to", answer.to())
                .field("fit_by", answer.fitBy())
                .field("ready_from", answer.ready().map(ready -> ready.first()))
                .field("ready_to", answer.ready().flatMap(ready -> ready.last()))
                .field("ready_days", answer.ready().map(ready -> ready.days()));
        json.object("total", total -> total(answer.cost().total(), total));
        json.array(
                "costs",
                lines -> answer.cost()
                        .lines()
                        .forEach(line -> lines.object(one -> one.field(
                                        "what", line.charge().what())
                                .field("units", line.units())
                                .field("material", line.isMaterial())
                                .field("hours_of_one", decimal(line.charge().hours(), FINE))
                                .field("amount_of_one", line.charge().cost().map(Cost::fine))
                                .field("missing", line.charge().missing())
                                .array(
                                        "listed_in",
                                        orders -> line.charge().sources().forEach(orders::value)))));
    }
}
