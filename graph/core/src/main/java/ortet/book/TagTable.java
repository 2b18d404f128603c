package ortet.book;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import ortet.plant.Tag;

/**
 * Numbers the tags that are named anywhere, from 0, and knows which of them names which unit; some 40 bytes a tag.
 *
 * <p>Not safe for use by several threads.
 */
final class TagTable {
    private static final int NOBODY = 0;

    private byte[] letters = new byte[4096];
    private int[] begins = new int[256];
    private int[] hashes = new int[256];
    private int[] units = new int[256];
    private int[] givers = new int[256];
    private int[] slots = new int[512];
    private int size;

    /** Return how many tags there are. */
    int size() {
        return size;
    }

    /** Return the number of a tag, which gets one if it has none. */
    int number(Tag tag) {
        byte[] text = tag.text().getBytes(StandardCharsets.UTF_8);
        int hash = hash(tag);
        int known = find(text, hash);
        return known >= 0 ? known : add(text, hash);
    }

    /** Return the number of a tag that was numbered before. */
    OptionalInt find(Tag tag) {
        int known = find(tag.text().getBytes(StandardCharsets.UTF_8), hash(tag));
        return known < 0 ? OptionalInt.empty() : OptionalInt.of(known);
    }

    /** Return the tag of a number. */
    Tag tag(int number) {
        int begin = begins[number];
        return new Tag(new String(letters, begin, begins[number + 1] - begin, StandardCharsets.UTF_8));
    }

    /** Return the unit that a tag names; 0 when it names none. */
    int unit(int number) {
        return units[number];
    }

    /** Return the recorded order of what gave the tag. */
    int giver(int number) {
        return givers[number];
    }

    /** Have a tag name a unit, given by an entry; of several that give it the first counts. */
    void tie(int number, int unit, int giver) {
        givers[number] = units[number] == NOBODY ? giver : Math.min(givers[number], giver);
        units[number] = unit;
    }

    /** Return another tag that names a unit and differs from this one in upper and lower case alone; -1 for none. */
    int alikeButForCase(int number) {
        String folded = folded(tag(number));
        int found = -1;
        int mask = slots.length - 1;
        for (int slot = spread(hashes[number]) & mask; slots[slot] != 0; slot = slot + 1 & mask) {
            int other = slots[slot] - 1;
            if (other != number
                    && hashes[other] == hashes[number]
                    && units[other] != NOBODY
                    && folded(tag(other)).equals(folded)
                    && (found < 0 || givers[other] < givers[found])) {
                found = other;
            }
        }
        return found;
    }

    /** Return every tag that names a unit. */
    List<String> tied() {
        List<String> tied = new ArrayList<>();
        for (int number = 0; number < size; number++) {
            if (units[number] != NOBODY) {
                tied.add(tag(number).text());
            }
        }
        return tied;
    }

    private static String folded(Tag tag) {
        return tag.text().toLowerCase(Locale.ROOT);
    }

    /** Tags that differ in upper and lower case alone have one hash. */
    private static int hash(Tag tag) {
        return folded(tag).hashCode();
    }

    private static int spread(int hash) {
        return (int) (hash * 0x9E3779B97F4A7C15L >>> Integer.SIZE);
    }

    private int find(byte[] text, int hash) {
        int mask = slots.length - 1;
        for (int slot = spread(hash) & mask; slots[slot] != 0; slot = slot + 1 & mask) {
            int number = slots[slot] - 1;
            if (hashes[number] == hash
                    && Arrays.equals(letters, begins[number], begins[number + 1], text, 0, text.length)) {
                return number;
            }
        }
        return -1;
    }

    private int add(byte[] text, int hash) {
        if (size + 2 > begins.length) {
            int wider = size + 2 + (size >> 1);
            begins = Arrays.copyOf(begins, wider);
            hashes = Arrays.copyOf(hashes, wider);
            units = Arrays.copyOf(units, wider);
            givers = Arrays.copyOf(givers, wider);
        }
        int begin = begins[size];
        if (begin + text.length > letters.length) {
            letters = Arrays.copyOf(letters, begin + text.length + (letters.length >> 1));
        }
        System.arraycopy(text, 0, letters, begin, text.length);
        begins[size + 1] = begin + text.length;
        hashes[size] = hash;
        if ((size + 1) * 10L > slots.length * 7L) {
            slots = new int[slots.length * 2];
            for (int number = 0; number < size; number++) {
                put(number);
            }
        }
        put(size);
        return size++;
    }

    private void put(int number) {
        int mask = slots.length - 1;
        int slot = spread(hashes[number]) & mask;
        while (slots[slot] != 0) {
            slot = slot + 1 & mask;
        }
        slots[slot] = number + 1;
    }
}
