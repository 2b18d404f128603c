package ortet.choice.inputs;

import java.util.List;
import ortet.book.BookView;
import ortet.choice.Limits;
import ortet.choice.PlanMeans;

/** Makes the hours and the room that plans share out of the lines that tell them; licences and shares are not for plans. */
public final class PlanMeansReader {
    private static final int YEARS = 10;

    private PlanMeansReader() {}

    /**
     * Read.
     *
     * @param lines as for the choice of stock
     * @param firstYear the calendar year of the day asked about
     * @throws ortet.value.Refused when a line names what is not in the book, or is told twice
     */
    public static PlanMeans read(BookView view, List<LimitLine> lines, int firstYear) {
        LimitsRead read = new LimitsRead(lines, firstYear, YEARS, view);
        Limits limits = read.hoursAndRoom();
        return new PlanMeans(
                limits.hours(), limits.roomM2(), read::place, read.seasons(), firstYear, ChoiceInputs.PLENTY);
    }
}
