package ortet.choice;

import java.util.List;

/**
 * How the plan fares in each draw of what is not known, when it is carried out as it is.
 *
 * @param margins by draw
 * @param demandMet by draw, the share of all trees asked for that can be delivered; empty when none is asked for
 */
public record Outlook(List<Double> margins, List<Double> demandMet) {
    public Outlook {
        margins = List.copyOf(margins);
        demandMet = List.copyOf(demandMet);
    }

    /** Return the share of draws in which at least this share of the demand is met; 0 when nothing was drawn. */
    public double chanceOfMeeting(double share) {
        return demandMet.isEmpty()
                ? 0
                : (double) demandMet.stream().filter(met -> met >= share - 1e-9).count() / demandMet.size();
    }
}
