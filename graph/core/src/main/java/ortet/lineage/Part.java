package ortet.lineage;

import ortet.book.Act;

/** Names the part that a unit plays for another that comes from it. */
final class Part {
    private Part() {}

    /** Return the part in words: {@code mother}, {@code scion}, {@code one of several mothers}. */
    static String of(Act act, boolean oneOfSeveral) {
        return oneOfSeveral ? "one of several " + parts(act) : one(act);
    }

    private static String one(Act act) {
        return switch (act) {
            case LAYERED_FROM, STRUCK_FROM, DIVIDED_FROM -> "mother";
            case SCION_OF -> "scion";
            case ROOTSTOCK_OF -> "rootstock";
            case SEED_OF -> "seed parent";
            case POLLEN_OF -> "pollen parent";
            case SPORT_OF -> "plant that sported";
            case DRAWN_FROM, SPLIT_FROM, MERGED_FROM -> "batch";
            case ONE_OF -> "the same plant";
            case LAYERED_BELOW, STRUCK_BELOW -> "mother, below the union";
            case STOCK_WOOD_OF -> "rootstock whose wood it is";
        };
    }

    private static String parts(Act act) {
        return switch (act) {
            case MERGED_FROM -> "batches";
            case ONE_OF -> "that it may be";
            case STRUCK_BELOW -> "mothers, below the union";
            case STOCK_WOOD_OF -> "rootstocks whose wood it is";
            default -> one(act) + "s";
        };
    }
}
