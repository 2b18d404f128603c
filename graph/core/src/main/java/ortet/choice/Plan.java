package ortet.choice;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import ortet.book.UnitFacts.Method;
import ortet.choice.PlanMother.LeftOut;
import ortet.figures.Interval;

/**
 * How many to set by one method, and what comes of it.
 *
 * @param question what was asked
 * @param cultivars the names that it is about, sorted
 * @param method the method
 * @param stages what the book tells of each stage, in order; none where it tells nothing of one of them
 * @param weeks the usual weeks of setting; absent where nothing was ever set by the method
 * @param answer the number to set; absent where it cannot be met
 * @param shortfall why it cannot be met, and what can; absent where it can
 * @param mothers the mothers in the order of what is known of them, with what is to be taken from each
 * @param leftOut the mothers left out
 * @param pending how many of the cultivar's units by this method are not known yet
 * @param set how many were set in all
 */
public record Plan(
        PlanQuestion question,
        List<String> cultivars,
        Method method,
        List<PlanStage> stages,
        Optional<PlanWeeks> weeks,
        Optional<Answer> answer,
        Optional<Shortfall> shortfall,
        List<PlanMother> mothers,
        List<LeftOut> leftOut,
        int pending,
        int set) {

    /**
     * A number to set.
     *
     * @param toSet the smallest number that is enough
     * @param chance how likely enough trees come of it in time
     * @param chanceOfOneLess how likely enough would have come of one less, less than asked
     * @param expected how many trees are expected
     * @param range where their number lies with a probability of 90 %
     * @param from the first day of setting
     * @param to the last day of setting
     * @param fitBy the day by which the book tells them to be fit for sale
     * @param ready when to look for roots; absent where that is not known
     * @param cost what it takes
     */
    public record Answer(
            int toSet,
            double chance,
            double chanceOfOneLess,
            double expected,
            Interval range,
            LocalDate from,
            LocalDate to,
            LocalDate fitBy,
            Optional<Ready> ready,
            PlanCost cost) {}

    /**
     * When layers are ready to sever, or other units found rooted, counted from the first and the last day of setting.
     *
     * @param first when one in ten of those set first was ready
     * @param last when nine in ten of those set last were ready; absent where so many still waited that it cannot be told
     * @param days the median of the days that it took
     * @param happened of how many that is known
     * @param lean whose times they are
     */
    public record Ready(LocalDate first, Optional<LocalDate> last, double days, int happened, PlanStage.Lean lean) {}

    /**
     * Why a plan cannot be met, and the nearest that can.
     *
     * @param why why
     * @param positions how many positions are free; absent where they do not matter
     * @param needed how many would have to be set; absent where not even {@link PlanQuestion#MOST} are enough, or nothing
     *     comes in time
     * @param most how many trees can be had by the day, as sure as asked, with what there is; absent where it cannot be told
     * @param likely how many trees can be had by the day as likely as not, with what there is; absent where it cannot be told
     * @param chance how likely as many as asked come by the day with what there is
     * @param binds what is scarcest of hours and room, in words; absent where they do not matter
     * @param soonest the first day by which as many as asked can be had, as sure as asked, with what there is; absent where
     *     there is none as far as the book tells
     * @param from the first day of setting of what can be had by the day; absent where nothing can
     * @param to the last day of it
     */
    public record Shortfall(
            Why why,
            Optional<Integer> positions,
            Optional<Integer> needed,
            Optional<Integer> most,
            Optional<Integer> likely,
            Optional<Double> chance,
            Optional<String> binds,
            Optional<LocalDate> soonest,
            Optional<LocalDate> from,
            Optional<LocalDate> to) {}

    /** Why a plan cannot be met. */
    public enum Why {
        /** Nothing is known by which it could be told. */
        NOT_KNOWN,
        /** Nothing set from now on is fit for sale by the day. */
        TOO_LATE,
        /** There are not enough positions. */
        POSITIONS,
        /** There are not enough hours, or there is not enough room. */
        MEANS,
        /** However many are set, it is not as sure as asked: a bad season spoils all of them. */
        NOT_SO_SURE
    }

    public Plan {
        Objects.requireNonNull(question);
        cultivars = List.copyOf(cultivars);
        Objects.requireNonNull(method);
        stages = List.copyOf(stages);
        Objects.requireNonNull(weeks);
        if (answer.isPresent() == shortfall.isPresent()) {
            throw new IllegalArgumentException("either an answer or a shortfall");
        }
        mothers = List.copyOf(mothers);
        leftOut = List.copyOf(leftOut);
    }
}
