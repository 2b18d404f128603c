package ortet.screen;

/** Says that the user stopped the work (Ctrl-C); nothing was written into the book by it. */
public final class Stopped extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private Stopped() {
        super("stopped");
    }

    /**
     * Stop here if the user asked for it. Called only where stopping does no harm: while an answer is shown, and in work on
     * the book that is all or nothing.
     *
     * @throws Stopped when this thread was interrupted, which it then is no longer
     */
    public static void check() {
        if (Thread.interrupted()) {
            throw new Stopped();
        }
    }
}
