package ortet.choice;

/** The main reason for what is done with a mother this year. */
public enum Why {
    /** She is held for plant health. */
    HELD,
    /** She must recover from the last layering. */
    RECOVERING,
    /** She has no position and no wood yet. */
    NOTHING_TO_TAKE,
    /** Nobody may propagate her cultivar without a licence. */
    NO_LICENCE,
    /** It earns more than anything else that could be done with her. */
    EARNS_MOST,
    /** Her wood will be worth more in a later year. */
    WORTH_MORE_LATER,
    /** What she would give is not asked for, or not at a price that pays. */
    NO_DEMAND,
    /** It would pay, were there more of the scarcest means. */
    MEANS_ARE_SHORT,
    /** Something else would do as well. */
    AS_GOOD,
    /** She stands in the way of what earns more in her place. */
    ROOM_IS_WORTH_MORE,
    /** What it teaches about her is worth more than it costs. */
    TEACHES
}
