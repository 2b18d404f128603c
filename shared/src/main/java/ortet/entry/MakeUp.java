package ortet.entry;

/** What stands behind a name. */
public enum MakeUp {
    /** One clone. */
    CLONAL,
    /** Several clones. */
    SEVERAL_CLONES,
    /** Seed raised. */
    SEED_RAISED
}
