package ortet.nursery;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.Array;
import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.Collections;
import java.util.Deque;
import java.util.EnumSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import ortet.book.Act;
import ortet.book.BookView;
import ortet.book.Diary;
import ortet.book.ForwardingView;
import ortet.book.Head;
import ortet.book.NumberSink;
import ortet.book.Parameters;
import ortet.book.QueryName;
import ortet.book.Rows;
import ortet.book.UnitFacts.Nature;
import ortet.plant.UnitNumber;
import ortet.value.When;

/** How much memory a snapshot takes. */
class MemoryTests {
    private static final int PLANTS = 1_000_000;
    private static final long MIB = 1 << 20;

    /** A nursery of as many plants as wanted, each layered from an earlier one and counting for take. */
    private static final class Large extends ForwardingView {
        private final int plants;

        Large(BookView view, int plants) {
            super(view);
            this.plants = plants;
        }

        @Override
        public Head head() {
            Head head = super.head();
            return new Head(head.bookId(), head.zone(), 4L * plants, head.digest(), plants);
        }

        @Override
        public Rows ask(QueryName name, Parameters parameters) {
            return switch (name.name()) {
                case "cultivars-in-use" -> new Rows(List.of("cultivar"), List.of(List.of("Acer palmatum")));
                default -> new Rows(List.of("unit", "kind", "raised", "amended"), List.of());
            };
        }

        @Override
        public void stream(QueryName name, Parameters parameters, NumberSink sink) {
            for (int unit = 1; unit <= plants; unit++) {
                switch (name.name()) {
                    case "all-units" -> sink.row(new long[] {Packed.unit(new UnitNumber(unit), Nature.LAYER, DAY)});
                    case "all-links" ->
                        sink.row(new long[] {
                            Packed.link(new UnitNumber(unit), Act.LAYERED_FROM, new UnitNumber(Math.max(1, unit / 7)))
                        });
                    case "all-link-counts" -> {}
                    case "all-cohorts" -> sink.row(new long[] {unit, 0, 16_000, 0, 1, 1, unit});
                    case "all-outcomes" -> sink.row(new long[] {unit, 0, 1, 16_100, 0});
                    case "all-standings" -> sink.row(new long[] {unit, 0, 1});
                    case "all-leavings" -> sink.row(new long[] {unit, 0, 1, 17_000, 0});
                    case "all-pottings" -> sink.row(new long[] {unit, 16_100, 0});
                    case "all-signs" -> sink.row(new long[] {unit, 1, 16_500, 0, 2500});
                    case "all-treatments" -> {}
                    case "all-names" -> sink.row(new long[] {unit, 0, 0});
                    default -> throw new IllegalArgumentException(name.name());
                }
            }
        }
    }

    private static final When DAY = When.on(LocalDate.ofEpochDay(16_000));

    private static Snapshot large(int plants) {
        return new Diary()
                .store()
                .read(view ->
                        Snapshot.of(new Large(view, plants), LocalDate.of(2026, 1, 1), EnumSet.allOf(Part.class)));
    }

    @Test
    void aMillionPlantsWithAllTheirLinksTakeLessThan150MiB() {
        Snapshot snapshot = large(PLANTS);
        assertEquals(PLANTS, snapshot.linkCount());
        assertEquals(PLANTS, snapshot.cohorts().size());
        assertEquals(1, snapshot.cohorts().taken(PLANTS - 1));
        assertTrue(snapshot.bytes() < 150 * MIB, snapshot.bytes() / MIB + " MiB");
        // what is told is what is really reached: headers and words on top are a few KiB
        long reached = reached(snapshot);
        assertTrue(reached >= snapshot.bytes(), reached + " reached, told " + snapshot.bytes());
        assertTrue(reached < snapshot.bytes() + 100_000, reached + " reached, told " + snapshot.bytes());
    }

    @Test
    void growsWithTheNumberOfPlantsAlone() {
        long one = large(10_000).bytes();
        long ten = large(100_000).bytes();
        assertEquals(10.0, (double) ten / one, 0.01);
    }

    /** Return the bytes of all arrays and boxes that can be reached, as a JVM with 64 bits would have them. */
    private static long reached(Object root) {
        Set<Object> met = Collections.newSetFromMap(new IdentityHashMap<>());
        Deque<Object> open = new ArrayDeque<>(List.of(root));
        long bytes = 0;
        while (!open.isEmpty()) {
            Object object = open.poll();
            if (!met.add(object)) {
                continue;
            }
            Class<?> type = object.getClass();
            if (type.isArray()) {
                int length = Array.getLength(object);
                boolean plain = type.getComponentType().isPrimitive();
                int width = !plain ? 4 : type == byte[].class ? 1 : type == int[].class ? 4 : 8;
                bytes += 16 + (long) width * length;
                for (int at = 0; !plain && at < length; at++) {
                    Optional.ofNullable(Array.get(object, at)).ifPresent(open::add);
                }
            } else if (object instanceof Optional<?> optional) {
                bytes += 16;
                optional.ifPresent(open::add);
            } else if (object instanceof List<?> list) {
                bytes += 16 + 4L * list.size();
                open.addAll(list);
            } else if (type.getName().startsWith("ortet.nursery")) {
                bytes += 16;
                open.addAll(fields(object, type));
            }
        }
        return bytes;
    }

    private static List<Object> fields(Object object, Class<?> type) {
        Deque<Object> found = new ArrayDeque<>();
        for (Field field : type.getDeclaredFields()) {
            if (!Modifier.isStatic(field.getModifiers()) && !field.getType().isPrimitive()) {
                field.setAccessible(true);
                try {
                    Optional.ofNullable(field.get(object)).ifPresent(found::add);
                } catch (IllegalAccessException hidden) {
                    throw new AssertionError(hidden);
                }
            }
        }
        return List.copyOf(found);
    }
}
