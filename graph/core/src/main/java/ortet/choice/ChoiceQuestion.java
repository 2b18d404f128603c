package ortet.choice;

import java.util.List;
import java.util.Objects;
import ortet.value.Refused;
import ortet.value.Require;

/**
 * All that a plan rests on.
 *
 * @param mothers the candidates, each key but once
 * @param ways at most one for each cultivar; a cultivar without is neither layered nor struck
 * @param outlets at most one for each cultivar and size class; what has none is worth nothing
 * @param limits hours, room, licences and concentration
 * @param costs of hours and room
 * @param seasons what the seasons to come do to take
 * @param setUp what going to a mother takes, whatever is done with her
 * @param settings how to choose
 */
public record ChoiceQuestion(
        List<Mother> mothers,
        List<Ways> ways,
        List<Outlet> outlets,
        Limits limits,
        Costs costs,
        SeasonEffects seasons,
        SetUp setUp,
        Settings settings) {
    public ChoiceQuestion {
        mothers = List.copyOf(mothers);
        ways = List.copyOf(ways);
        outlets = List.copyOf(outlets);
        Objects.requireNonNull(limits);
        Objects.requireNonNull(costs);
        Objects.requireNonNull(seasons);
        Objects.requireNonNull(setUp);
        Objects.requireNonNull(settings);
        Require.noRepeats(mothers.stream().map(Mother::key).toList(), "mothers");
        Require.noRepeats(ways.stream().map(Ways::cultivar).toList(), "ways");
        Require.noRepeats(
                outlets.stream().map(o -> List.of(o.cultivar(), o.sizeClass())).toList(), "outlets");
        for (Mother mother : mothers) {
            fits(mother.whileLong(), limits.hours().seasons(), mother.key());
            fits(mother.whileShort(), limits.hours().seasons(), mother.key());
            for (Draws draws : mother.rates().all()) {
                enough(draws, Math.max(settings.draws(), settings.scenarios()), mother.key());
            }
        }
        for (Deed deed : Deed.values()) {
            setUp.of(deed).forEach(needs -> fits(needs, limits.hours().seasons(), "going to a mother"));
        }
        for (Ways way : ways) {
            for (Raising raising : raisings(way)) {
                fits(raising.perSet(), limits.hours().seasons(), raising.key());
                raising.perEstablished().forEach(n -> fits(n, limits.hours().seasons(), raising.key()));
            }
        }
        for (List<Draws> list : List.of(seasons.layers(), seasons.cuttings())) {
            list.forEach(draws -> enough(draws, Math.max(settings.draws(), settings.scenarios()), "seasons"));
        }
        for (Concentration limit : limits.concentrations()) {
            long groups = mothers.stream().map(limit::of).distinct().count();
            if (groups > 0 && limit.share() * groups < 1) {
                throw Refused.because(
                        "bad-concentration",
                        "share on one " + limit.on().name().toLowerCase(java.util.Locale.ROOT)
                                + ": expected at least 1/" + groups + ", for there are " + groups + ", found "
                                + limit.share());
            }
        }
    }

    /** A question in which going to a mother takes nothing. */
    public ChoiceQuestion(
            List<Mother> mothers,
            List<Ways> ways,
            List<Outlet> outlets,
            Limits limits,
            Costs costs,
            SeasonEffects seasons,
            Settings settings) {
        this(mothers, ways, outlets, limits, costs, seasons, SetUp.NONE, settings);
    }

    /** Return how much more than its price a tree asked for counts, by the aim; 0 when the aim is the margin. */
    public double wanted() {
        return new Layout(this, 1).wanted;
    }

    /** Return this question with other settings. */
    public ChoiceQuestion with(Settings other) {
        return new ChoiceQuestion(mothers, ways, outlets, limits, costs, seasons, setUp, other);
    }

    /** Return this question with other limits. */
    public ChoiceQuestion with(Limits other) {
        return new ChoiceQuestion(mothers, ways, outlets, other, costs, seasons, setUp, settings);
    }

    /** Return this question with another effort of going to a mother. */
    public ChoiceQuestion with(SetUp other) {
        return new ChoiceQuestion(mothers, ways, outlets, limits, costs, seasons, other, settings);
    }

    static List<Raising> raisings(Ways ways) {
        List<Raising> all = new java.util.ArrayList<>();
        ways.layers().forEach(all::addAll);
        all.addAll(ways.cuttings());
        return all;
    }

    private static void fits(Needs needs, int seasons, String whose) {
        for (List<Double> list : List.of(needs.hours(), needs.areaM2())) {
            Require.that(
                    list.isEmpty() || list.size() == seasons,
                    "needs of " + whose,
                    seasons + " seasons, as the hours there are");
        }
    }

    private static void enough(Draws draws, int asked, String whose) {
        Require.that(draws.size() == 1 || draws.size() >= asked, "draws of " + whose, "one, or at least " + asked);
    }
}
