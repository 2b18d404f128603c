package ortet.choice.inputs;

import java.util.EnumSet;
import java.util.Set;
import ortet.choice.Advice;
import ortet.choice.Deed;

/**
 * In what the evidence is thin on which a mother is to be sold or cut back. All numbers are judgement: after ten outcomes the
 * share that took is known to about 30 of a hundred either way, and the largest trees take four seasons and more.
 */
public enum Thin {
    /** Of fewer than {@value #FEW} layers and cuttings of hers it is known whether they took. */
    FEW_JUDGED,
    /** The deed is the best in fewer than {@value #OFTEN_PERCENT} of a hundred draws. */
    SELDOM_BEST,
    /** The book knows outcomes of fewer than {@value #SEASONS} seasons. */
    YOUNG_BOOK;

    /** So many outcomes of hers are enough. */
    public static final int FEW = 10;

    /** In so many of a hundred draws a deed is best often enough. */
    public static final int OFTEN_PERCENT = 80;

    /** So many seasons of outcomes are enough. */
    public static final int SEASONS = 5;

    private static final double ALL = 100;

    /** Return in what the evidence is thin; nothing where she is neither to be sold nor to be cut back. */
    public static Set<Thin> of(Advice advice, Evidence evidence) {
        Set<Thin> thin = EnumSet.noneOf(Thin.class);
        if (!isForGood(advice.now().deed())) {
            return thin;
        }
        if (evidence.units() < FEW) {
            thin.add(FEW_JUDGED);
        }
        if (advice.sureness()
                .share()
                .filter(share -> share < OFTEN_PERCENT / ALL)
                .isPresent()) {
            thin.add(SELDOM_BEST);
        }
        if (evidence.bookSeasons() < SEASONS) {
            thin.add(YOUNG_BOOK);
        }
        return thin;
    }

    private static boolean isForGood(Deed deed) {
        return switch (deed) {
            case SELL, LAYER_AND_SELL, CUT_BACK -> true;
            case LEAVE_LONG, LAYER, REST, TAKE_CUTTINGS, TRY_OUT -> false;
        };
    }
}
