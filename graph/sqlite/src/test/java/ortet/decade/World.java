package ortet.decade;

/** The laws by which a nursery goes, by what they differ from those that the advice takes for granted. */
enum World {
    /** They do not. */
    RIGHT("right", 20),
    /** Mothers of a cultivar do not differ. */
    MOTHERS_ALIKE("mothers alike", 18),
    /** Half of the mothers are good and half bad, with nothing in between. */
    TWO_HUMPS("two humps", 18),
    /** Half of the mothers take worse each year. */
    AGEING("ageing", 18),
    /** Thin stems take better than thick ones. */
    STEMS("stems", 18),
    /** Each cultivar has seasons of its own beside the shared ones. */
    CULTIVARS_SEASONS("cultivars' seasons", 18),
    /** Failures are often not written down. */
    UNWRITTEN_FAILURES("unwritten failures", 18),
    /** What is asked for changes for good. */
    DEMAND_SHIFTS("demand shifts", 18),
    /** Prices fall year by year. */
    PRICES_FALL("prices fall", 18),
    /** One season spoils nearly everything. */
    DISASTER("disaster", 18),
    /** Wood comes back slower than growers believe. */
    SLOW_WOOD("slow wood", 18);

    private final String words;
    private final int nurseries;

    World(String words, int nurseries) {
        this.words = words;
        this.nurseries = nurseries;
    }

    /** Return what tables call it. */
    String words() {
        return words;
    }

    /** Return how many nurseries of it a full run has. */
    int nurseries() {
        return nurseries;
    }
}
