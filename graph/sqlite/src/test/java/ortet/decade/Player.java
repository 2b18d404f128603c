package ortet.decade;

import java.util.Optional;
import java.util.function.BiFunction;
import ortet.decade.ByRank.Rank;

/** Everybody who decides. */
enum Player {
    ADVICE("advice", true, (truth, notebook) -> new ByAdvice((Book) notebook, Optional.empty())),
    PERCENTAGE_KEEP("best percentage, keep", false, (truth, notebook) -> new ByRank(Rank.PERCENTAGE, false)),
    PERCENTAGE_SELL("best percentage, sell", false, (truth, notebook) -> new ByRank(Rank.PERCENTAGE, true)),
    SMOOTHED_KEEP("best percentage, smoothed, keep", false, (truth, notebook) -> new ByRank(Rank.SMOOTHED, false)),
    SMOOTHED_SELL("best percentage, smoothed, sell", false, (truth, notebook) -> new ByRank(Rank.SMOOTHED, true)),
    THICKEST_KEEP("thickest, keep", false, (truth, notebook) -> new ByRank(Rank.THICKEST, false)),
    THICKEST_SELL("thickest, sell", false, (truth, notebook) -> new ByRank(Rank.THICKEST, true)),
    AS_BEFORE("as before", false, (truth, notebook) -> new AsBefore(truth.luck())),
    KNOWING(
            "one who knows",
            true,
            (truth, notebook) ->
                    new ByAdvice((Book) notebook, Optional.of(mother -> truth.rate(mother, Truth.FIRST + 5))));

    private final String words;
    private final boolean needsBook;
    private final BiFunction<Truth, Notebook, Policy> policy;

    Player(String words, boolean needsBook, BiFunction<Truth, Notebook, Policy> policy) {
        this.words = words;
        this.needsBook = needsBook;
        this.policy = policy;
    }

    /** Return what tables call it. */
    String words() {
        return words;
    }

    boolean needsBook() {
        return needsBook;
    }

    Policy policy(Truth truth, Notebook notebook) {
        return policy.apply(truth, notebook);
    }
}
