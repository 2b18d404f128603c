package ortet.decade;

/** What raising takes, the same in all nurseries. */
final class Cost {
    static final double SEVERING_HOURS = 0.1;
    static final double POTTING_HOURS = 0.1;
    static final double GRADING_HOURS = 0.03;
    static final double SELLING_HOURS = 0.1;
    static final double CUTTING_BACK_HOURS = 0.3;
    static final double FIRST_POT = 0.6;
    static final double SECOND_POT = 1.5;
    static final double MOTHER_M2 = 2;
    /** By how much hours in spring cost more beyond those that there are. */
    static final double MORE_HOURS = 3;
    /** By how much room costs more beyond what there is. */
    static final double MORE_ROOM = 4;
    /** What of the price is lost for a tree that was promised and is not there. */
    static final double PENALTY = 0.5;

    private static final double IN_FIRST_POT = 16;
    private static final double IN_SECOND_POT = 9;

    private Cost() {}

    /** Return how many square metres a tree needs so many years after it was set: it is potted on after two. */
    static double square(int years) {
        return 1 / (years < 2 ? IN_FIRST_POT : IN_SECOND_POT);
    }
}
