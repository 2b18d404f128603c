package ortet.choice.inputs;

import java.util.Currency;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import ortet.choice.ChoiceQuestion;

/**
 * What was read out of the book.
 *
 * @param question what the choice rests on; empty when there is nothing to choose among
 * @param nothing why not, in a plain sentence; empty when there is
 * @param candidates the mothers, in the order of the question
 * @param bands the diameter bands, in the order of the question
 * @param seasons the names of the seasons of the limits; one, of no name, where hours are told by the year
 * @param firstYear the calendar year that is year 0
 * @param currency of all money; empty when nothing is listed
 * @param notes what a reader must know to read the plan right
 * @param explained where each figure comes from
 */
public record ChoiceInputs(
        Optional<ChoiceQuestion> question,
        String nothing,
        List<Candidate> candidates,
        List<MotherBand> bands,
        List<String> seasons,
        int firstYear,
        Optional<Currency> currency,
        List<String> notes,
        List<Explained> explained) {
    /** An amount that stands for no limit: more than any nursery has. */
    public static final double PLENTY = 1e9;

    public ChoiceInputs {
        Objects.requireNonNull(question);
        Objects.requireNonNull(nothing);
        candidates = List.copyOf(candidates);
        bands = List.copyOf(bands);
        seasons = List.copyOf(seasons);
        Objects.requireNonNull(currency);
        notes = List.copyOf(notes);
        explained = List.copyOf(explained);
    }

    static ChoiceInputs nothing(String sentence, int firstYear, List<String> notes) {
        return new ChoiceInputs(
                Optional.empty(),
                sentence,
                List.of(),
                List.of(),
                List.of(),
                firstYear,
                Optional.empty(),
                notes,
                List.of());
    }
}
