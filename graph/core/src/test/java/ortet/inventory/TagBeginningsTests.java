package ortet.inventory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicInteger;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import ortet.book.BookView;
import ortet.book.Diary;
import ortet.book.ForwardingView;
import ortet.inventory.TagBeginnings.Beginning;
import ortet.plant.Tag;
import ortet.value.Folded;

class TagBeginningsTests {
    private static List<String> told(Diary diary, String text, int most) {
        return diary.store()
                .read(view -> TagBeginnings.of(view, text, most).stream()
                        .map(one -> one.text() + (one.whole() ? "" : "…"))
                        .toList());
    }

    @Test
    void tellsFewTagsWholeInTheOrderOfTheirNumbers() {
        Diary diary = new Diary();
        diary.write("2020 acquired J-2 J-10 J-1 K-1");
        assertEquals(List.of("J-1", "J-2", "J-10"), told(diary, "j", 5));
        assertEquals(List.of("J-1", "J-2", "J-10", "K-1"), told(diary, "", 4));
        assertEquals(List.of(), told(diary, "L", 5));
    }

    @Test
    void tellsManyByTheNextLetterInWhichTheyDiffer() {
        Diary diary = new Diary();
        diary.write("2020 acquired J-100..J-139 J-250 K-1 K-2");
        assertEquals(List.of("J…", "K…"), told(diary, "", 5));
        assertEquals(List.of("J-1…", "J-250"), told(diary, "J", 5));
        assertEquals(List.of("J-10…", "J-11…", "J-12…", "J-13…"), told(diary, "j-1", 5));
    }

    @Test
    void tellsATagThatOthersBeginWith() {
        Diary diary = new Diary();
        diary.write("2020 acquired J-1 J-10 J-11 J-12 J-2");
        assertEquals(List.of("J-1", "J-10", "J-11", "J-12"), told(diary, "J-1", 3));
        assertEquals(List.of("J-1…", "J-2"), told(diary, "J", 2));
    }

    @Test
    void readsAFewTagsHoweverManyThereAre() {
        Diary diary = new Diary();
        diary.write("2020 acquired J-0001..J-9999");
        AtomicInteger read = new AtomicInteger();
        List<Beginning> told = diary.store()
                .read(view -> TagBeginnings.of(
                        new ForwardingView(view) {
                            @Override
                            public List<Tag> tagsFrom(String text, int most) {
                                List<Tag> tags = super.tagsFrom(text, most);
                                read.addAndGet(tags.size());
                                return tags;
                            }
                        },
                        "J-",
                        20));
        assertEquals(10, told.size());
        assertTrue(read.get() < 100, () -> read + " tags read");
    }

    @Property(tries = 200)
    void whatIsToldIsTrueAndCoversEveryTag(
            @ForAll("tags") Set<String> tags,
            @ForAll("text") String text,
            @ForAll @IntRange(min = 1, max = 6) int most) {
        Diary diary = new Diary();
        tags.forEach(tag -> diary.write("2020 acquired " + tag));
        List<Beginning> told = diary.store().read((BookView view) -> TagBeginnings.of(view, text, most));
        String begun = Folded.of(text);
        Set<String> meant = new TreeSet<>();
        tags.stream().filter(tag -> Folded.of(tag).startsWith(begun)).forEach(meant::add);
        List<String> covered = new ArrayList<>();
        for (Beginning one : told) {
            assertTrue(one.whole() == meant.contains(one.text()) || !one.whole(), one::text);
            for (String tag : meant) {
                if (one.whole() ? tag.equals(one.text()) : Folded.of(tag).startsWith(Folded.of(one.text()))) {
                    covered.add(tag);
                }
            }
        }
        assertEquals(List.copyOf(meant), covered.stream().sorted().toList());
        if (meant.size() <= most) {
            assertTrue(told.stream().allMatch(Beginning::whole));
        }
    }

    @Provide
    Arbitrary<Set<String>> tags() {
        return letters(1, 4)
                .set()
                .ofMaxSize(14)
                .filter(all -> all.stream().map(Folded::of).distinct().count() == all.size());
    }

    @Provide
    Arbitrary<String> text() {
        return letters(0, 3);
    }

    private static Arbitrary<String> letters(int least, int most) {
        return Arbitraries.of("a", "A", "b", "1", "𝒳", "é")
                .list()
                .ofMinSize(least)
                .ofMaxSize(most)
                .map(list -> String.join("", list));
    }
}
