package ortet.book;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import ortet.entry.EntryId;
import ortet.entry.EntryKind;
import ortet.entry.Proposed;
import ortet.entry.Recorded;
import ortet.plant.PersonNumber;
import ortet.value.Unavailable;
import ortet.value.When;

/**
 * Keeps many entries, in recorded order from 1, in little memory: each as some hundred bytes, the first of them at hand
 * and the rest in a file that nobody else sees and that goes with the pile.
 *
 * <p>Costs some 40 bytes of memory an entry beyond what is at hand. Not safe for use by several threads.
 */
final class Pile implements AutoCloseable {
    private static final int HEAD = 2 * Long.BYTES + Long.BYTES + Integer.BYTES + 2;
    private static final int DAYS_KEPT = 50_000;
    private static final EntryKind[] KINDS = EntryKind.values();

    /**
     * How much is kept in memory.
     *
     * @param page how many bytes are written to the file at once
     * @param pages how many of them stay at hand
     * @param entries how many entries that were read lately
     * @param stories how many stories that were told lately
     */
    record Room(int page, int pages, int entries, int stories) {
        /** What is usual: some hundred megabytes beside what each entry costs. */
        static final Room USUAL = new Room(1 << 20, 32, 20_000, 10_000);
    }

    private final Path folder;
    private final List<byte[]> pages = new ArrayList<>();
    private final List<Long> filed = new ArrayList<>();
    private final List<Integer> ends = new ArrayList<>();
    private int pageFilled;
    private Optional<Path> file = Optional.empty();
    private FileChannel channel;
    private long written;

    private long[] starts = new long[1024];
    private byte[] kinds = new byte[1024];
    private int size;
    private long[] high = new long[1024];
    private long[] low = new long[1024];
    private int[] slots = new int[4096];
    private final Room room;
    private final Map<Integer, Recorded> lately;
    private final Map<String, When> days = new HashMap<>();
    private byte[] read = new byte[1024];

    /**
     * Make an empty pile.
     *
     * @param folder where its file may be, once it needs one
     * @param room how much is kept in memory
     */
    Pile(Path folder, Room room) {
        this.folder = folder;
        this.room = room;
        this.lately = new Lately<>(room.entries());
        pages.add(new byte[room.page()]);
        filed.add(-1L);
    }

    /** Return how many entries there are, which is the recorded order of the last one. */
    int size() {
        return size;
    }

    /** Return the kind of an entry. */
    EntryKind kind(long order) {
        return KINDS[kinds[(int) order - 1]];
    }

    /**
     * Put an entry on the pile.
     *
     * @param recorded the entry, whose recorded order must follow the last one
     * @param fields the canonical text of its fields
     */
    void add(Recorded recorded, String fields) {
        byte[] day = recorded.proposed().day().toString().getBytes(StandardCharsets.ISO_8859_1);
        byte[] text = fields.getBytes(StandardCharsets.UTF_8);
        int length = HEAD + day.length + text.length;
        if (pageFilled + length > pages.get(pages.size() - 1).length) {
            turn(length);
        }
        UUID id = recorded.proposed().id().value();
        ByteBuffer.wrap(pages.get(pages.size() - 1), pageFilled, length)
                .putLong(id.getMostSignificantBits())
                .putLong(id.getLeastSignificantBits())
                .putLong(recorded.recordedAt().toEpochMilli())
                .putInt(recorded.proposed().by().map(PersonNumber::value).orElse(0))
                .put((byte) recorded.entry().kind().ordinal())
                .put((byte) day.length)
                .put(day)
                .put(text);
        if (size + 1 >= starts.length) {
            starts = Arrays.copyOf(starts, size + 1 + (size >> 1));
            kinds = Arrays.copyOf(kinds, starts.length);
        }
        starts[size] = (long) (pages.size() - 1) << Integer.SIZE | pageFilled;
        kinds[size] = (byte) recorded.entry().kind().ordinal();
        pageFilled += length;
        starts[++size] = (long) (pages.size() - 1) << Integer.SIZE | pageFilled;
        remember(id, size);
    }

    /** Begin another page, and file the last one once there are many. */
    private void turn(int length) {
        int last = pages.size() - 1;
        ends.add(pageFilled);
        if (last >= room.pages()) {
            try {
                filed.set(last, written);
                ByteBuffer bytes = ByteBuffer.wrap(pages.get(last), 0, pageFilled);
                while (bytes.hasRemaining()) {
                    written += channel().write(bytes, written);
                }
                pages.set(last, new byte[0]);
            } catch (IOException trouble) {
                throw new Unavailable("cannot write beside the book, in " + folder + ": " + trouble, trouble);
            }
        }
        pages.add(new byte[Math.max(room.page(), length)]);
        filed.add(-1L);
        pageFilled = 0;
    }

    private FileChannel channel() throws IOException {
        if (channel == null) {
            Path made = Files.createTempFile(folder, ".entries", ".tmp");
            file = Optional.of(made);
            channel = FileChannel.open(
                    made, StandardOpenOption.READ, StandardOpenOption.WRITE, StandardOpenOption.DELETE_ON_CLOSE);
        }
        return channel;
    }

    /** Return an entry. */
    Recorded at(long order) {
        Recorded known = lately.get((int) order);
        if (known == null) {
            int length = fetch(order);
            ByteBuffer bytes = ByteBuffer.wrap(read, 0, length);
            EntryId id = new EntryId(new UUID(bytes.getLong(), bytes.getLong()));
            Instant instant = Instant.ofEpochMilli(bytes.getLong());
            int by = bytes.getInt();
            EntryKind kind = KINDS[bytes.get()];
            int dayLength = bytes.get();
            When day = day(new String(read, HEAD, dayLength, StandardCharsets.ISO_8859_1));
            int begin = HEAD + dayLength;
            String fields = new String(read, begin, length - begin, StandardCharsets.UTF_8);
            Optional<PersonNumber> hand = by == 0 ? Optional.empty() : Optional.of(new PersonNumber(by));
            known = new Recorded(order, instant, new Proposed(id, day, hand, CanonicalText.read(kind, fields)));
            lately.put((int) order, known);
        }
        return known;
    }

    private When day(String text) {
        if (days.size() > DAYS_KEPT) {
            days.clear();
        }
        return days.computeIfAbsent(text, When::parse);
    }

    /** Bring the bytes of an entry into {@code read}, and return how many they are. */
    private int fetch(long order) {
        int at = (int) order - 1;
        int page = (int) (starts[at] >>> Integer.SIZE);
        int begin = (int) starts[at];
        int length = length(at, page, begin);
        if (read.length < length) {
            read = new byte[length * 2];
        }
        if (filed.get(page) < 0) {
            System.arraycopy(pages.get(page), begin, read, 0, length);
            return length;
        }
        ByteBuffer bytes = ByteBuffer.wrap(read, 0, length);
        try {
            while (bytes.hasRemaining()) {
                if (channel.read(bytes, filed.get(page) + begin + bytes.position()) < 0) {
                    throw new IOException("the file is too short");
                }
            }
        } catch (IOException trouble) {
            throw new Unavailable("cannot read beside the book, in " + folder + ": " + trouble, trouble);
        }
        return length;
    }

    /** Return the length of an entry: up to the next one on its page, else as long as what was written on it. */
    private int length(int at, int page, int begin) {
        if ((int) (starts[at + 1] >>> Integer.SIZE) == page) {
            return (int) starts[at + 1] - begin;
        }
        return ends.get(page) - begin;
    }

    // ---- by identity ----

    /** Return the recorded order of the entry with an identity; 0 when there is none. */
    int order(EntryId id) {
        UUID wanted = id.value();
        int mask = slots.length - 1;
        for (int slot = spread(wanted) & mask; slots[slot] != 0; slot = slot + 1 & mask) {
            if (isOf(slots[slot], wanted)) {
                return slots[slot];
            }
        }
        return 0;
    }

    private static int spread(UUID id) {
        long mixed = (id.getMostSignificantBits() ^ id.getLeastSignificantBits()) * 0x9E3779B97F4A7C15L;
        return (int) (mixed >>> Integer.SIZE);
    }

    private boolean isOf(int order, UUID id) {
        return high[order - 1] == id.getMostSignificantBits() && low[order - 1] == id.getLeastSignificantBits();
    }

    private void remember(UUID id, int order) {
        if (order > high.length) {
            high = Arrays.copyOf(high, order + (order >> 1));
            low = Arrays.copyOf(low, high.length);
        }
        high[order - 1] = id.getMostSignificantBits();
        low[order - 1] = id.getLeastSignificantBits();
        if (order * 10L > slots.length * 7L) {
            slots = new int[slots.length * 2];
            for (int each = 1; each < order; each++) {
                put(spread(new UUID(high[each - 1], low[each - 1])), each);
            }
        }
        put(spread(id), order);
    }

    private void put(int hash, int order) {
        int mask = slots.length - 1;
        int slot = hash & mask;
        while (slots[slot] != 0) {
            slot = slot + 1 & mask;
        }
        slots[slot] = order;
    }

    @Override
    public void close() {
        if (channel != null) {
            try {
                channel.close();
                if (file.isPresent()) {
                    Files.deleteIfExists(file.get());
                }
            } catch (IOException trouble) {
                throw new UncheckedIOException(trouble);
            }
        }
    }
}
