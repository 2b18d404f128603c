package ortet.book;

import java.util.LinkedHashMap;
import java.util.Map;

/** Keeps so many values by number, those used lately. */
final class Lately<V> extends LinkedHashMap<Integer, V> {
    private static final long serialVersionUID = 1L;
    private final int most;

    Lately(int most) {
        super(16, 0.75f, true);
        this.most = most;
    }

    @Override
    protected boolean removeEldestEntry(Map.Entry<Integer, V> eldest) {
        return size() > most;
    }
}
