package ortet.book;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicInteger;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import ortet.value.Folded;
import ortet.value.Nearest;

class NearTagsTests {
    private final AtomicInteger asked = new AtomicInteger();

    /** Sort as SQLite does, by the bytes of UTF-8. */
    private static final Comparator<String> BY_BYTES = (one, other) -> Arrays.compareUnsigned(
            one.getBytes(java.nio.charset.StandardCharsets.UTF_8),
            other.getBytes(java.nio.charset.StandardCharsets.UTF_8));

    private NearTags among(List<String> tags) {
        TreeMap<String, String> sorted = new TreeMap<>(BY_BYTES);
        tags.forEach(tag -> sorted.put(Folded.of(tag), tag));
        asked.set(0);
        return new NearTags(after -> {
            asked.incrementAndGet();
            return Optional.ofNullable(sorted.higherEntry(after))
                    .map((Map.Entry<String, String> entry) -> new NearTags.Candidate(entry.getKey(), entry.getValue()));
        });
    }

    @Provide
    Arbitrary<String> tags() {
        return Arbitraries.of("J", "j", "K", "-", "0", "1", "2", "4", "é", "É", "𝛼")
                .list()
                .ofMinSize(1)
                .ofMaxSize(9)
                .map(letters -> String.join("", letters));
    }

    @Property(tries = 2000)
    void findsWhatAComparisonWithEveryTagFinds(
            @ForAll("tags") String wanted, @ForAll @Size(max = 60) List<@net.jqwik.api.From("tags") String> tags) {
        // No two tags of a book differ in case alone.
        Map<String, String> distinct = new TreeMap<>();
        tags.forEach(tag -> distinct.putIfAbsent(Folded.of(tag), tag));
        List<String> all = List.copyOf(distinct.values());
        assertEquals(Nearest.list(wanted, all, 3), among(all).near(wanted));
    }

    @Test
    void looksAtFewOfVeryMany() {
        List<String> tags = new ArrayList<>();
        for (int number = 0; number < 200_000; number++) {
            tags.add(String.format("J-%06d", number));
        }
        assertEquals(List.of("J-000140", "J-001140", "J-002140"), among(tags).near("J-00l140"));
        assertTrue(asked.get() < 2000, asked + " steps");
        assertEquals(List.of(), among(tags).near("WHOLLY-OTHER"));
        assertTrue(asked.get() < 2000, asked + " steps");
        assertEquals(Nearest.list("J-19999", tags, 3), among(tags).near("J-19999"));
        assertTrue(asked.get() < 2000, asked + " steps");
    }

    @Test
    void givesUpWhereNearlyEverythingCouldBeMeant() {
        List<String> tags = new ArrayList<>();
        for (int number = 0; number < 100_000; number++) {
            tags.add(String.format("%030d", number));
        }
        assertEquals(List.of(), among(tags).near("abcdefghijklmnopqrst0123456789"));
        assertTrue(asked.get() <= 2 * NearTags.MOST_STEPS, asked + " steps");
    }
}
