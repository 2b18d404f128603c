package ortet.yield;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import ortet.book.BookView;
import ortet.book.Diary;
import ortet.book.Histories;
import ortet.nursery.Snapshot;
import ortet.plant.UnitNumber;
import ortet.value.Refused;

/** What became of cohorts in histories made up at random, against the same worked out from the timelines, plainly. */
class FatesOfABookTests {
    private static final List<String> DAYS = List.of("2018-06-30", "2020-01-01", "2023-12-31");
    private static final List<String> ANY = List.of(
            "J-1", "J-2", "J-3", "C-1", "C-2", "T-1", "T-2", "T-3", "G-1", "GB-1", "S-1", "D-1", "B-1", "B-2", "N-1",
            "N-2");

    private static boolean isTaken(Diary diary, String line) {
        try {
            return !diary.write(line).written().isEmpty();
        } catch (Refused refused) {
            return false;
        }
    }

    /** Write a history, and after it much of what follows a take: drawing, potting, grading, merging, losing. */
    private static Diary history(int seed) {
        Diary diary = new Diary();
        Histories.write(seed, 150, line -> isTaken(diary, line));
        Random random = new Random(seed);
        isTaken(diary, "2016-03-01 cuttings-struck N-1 N-2; mothers=K-1; count=12");
        for (int at = 0; at < 150; at++) {
            String day = String.format(
                    "20%02d-%02d-%02d", 16 + random.nextInt(7), 1 + random.nextInt(12), 1 + random.nextInt(28));
            if (random.nextInt(10) == 0) {
                day = day.substring(0, random.nextBoolean() ? 7 : 4);
            }
            String any = ANY.get(random.nextInt(ANY.size()));
            String other = ANY.get(random.nextInt(ANY.size()));
            String line = switch (random.nextInt(15)) {
                case 0 -> "graded " + any + "; size=small";
                case 1 -> "measured " + any + "; stem_mm=12.5";
                case 2, 3 -> "seen " + any;
                case 4 -> "culled " + any + "; cull=quality";
                case 5 -> "drawn B-" + (1 + random.nextInt(2)) + "; source=" + any + "; count=3";
                case 6 -> "merged X-" + at + "; sources=" + any + " " + other;
                case 7 -> "taken " + any + "; count=2";
                case 8 -> "returned " + any;
                case 9 -> "kept-as-stock " + any;
                case 10 -> "split Y-" + at + "; source=" + any + "; count=2";
                case 11 -> "sold " + any + "; count=1";
                case 12 -> "lost " + any + "; count=1";
                case 13 -> "corrected; target=x" + random.nextInt(at + 1) + "; field=day; value=2019-07-15";
                default -> "potted " + any + "; container=2 L";
            };
            isTaken(diary, "x" + at + ": " + day + " " + line);
        }
        return diary;
    }

    private static Set<String> told(Samples samples, Fates fates) {
        Set<String> lines = new TreeSet<>();
        for (int row = 0; row < samples.cohorts().size(); row++) {
            if (samples.isThere(row)) {
                int account = fates.account(row);
                StringBuilder line =
                        new StringBuilder().append(samples.cohorts().unit(row));
                if (fates.isBlurred(account)) {
                    line.append(" blurred");
                } else {
                    for (Fates.Established how : Fates.Established.values()) {
                        line.append(' ').append(how).append(' ').append(fates.count(account, how));
                    }
                    for (Fates.Saleable how : Fates.Saleable.values()) {
                        line.append(' ').append(how).append(' ').append(fates.count(account, how));
                    }
                }
                lines.add(line.toString());
            }
        }
        return lines;
    }

    private static Set<String> told(Map<UnitNumber, FatesRowByRow.Account> accounts) {
        Set<String> lines = new TreeSet<>();
        accounts.forEach((unit, account) -> {
            StringBuilder line = new StringBuilder().append(unit.value());
            if (account.isBlurred()) {
                line.append(" blurred");
            } else {
                for (Fates.Established how : Fates.Established.values()) {
                    line.append(' ').append(how).append(' ').append(account.count(how));
                }
                for (Fates.Saleable how : Fates.Saleable.values()) {
                    line.append(' ').append(how).append(' ').append(account.count(how));
                }
            }
            lines.add(line.toString());
        });
        return lines;
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8})
    void agreesWithWhatTheTimelinesTell(int seed) {
        Diary diary = history(seed);
        diary.store().read(view -> {
            for (String day : DAYS) {
                compare(view, LocalDate.parse(day));
            }
            return 0;
        });
    }

    private static void compare(BookView view, LocalDate day) {
        Samples samples = Samples.of(Snapshot.of(view, day, Fates.PARTS), Periods.DEFAULTS);
        Fates fates = Fates.of(samples, Establishment.DEFAULTS);
        Map<UnitNumber, FatesRowByRow.Account> slow = FatesRowByRow.of(view, day);
        assertEquals(told(slow), told(samples, fates), () -> "as of " + day);
        for (int row = 0; row < samples.cohorts().size(); row++) {
            for (int other = 0; other < row; other++) {
                if (samples.isThere(row) && samples.isThere(other)) {
                    boolean together = fates.account(row) == fates.account(other);
                    UnitNumber unit = new UnitNumber(samples.cohorts().unit(other));
                    assertEquals(
                            slow.get(new UnitNumber(samples.cohorts().unit(row)))
                                    .cohorts()
                                    .contains(unit),
                            together);
                }
            }
        }
    }

    @Test
    void comesAcrossEveryEnd() {
        Set<Object> met = new HashSet<>();
        for (int seed = 1; seed <= 8; seed++) {
            history(seed).store().read(view -> {
                for (FatesRowByRow.Account account :
                        FatesRowByRow.of(view, LocalDate.parse("2023-12-31")).values()) {
                    if (account.isBlurred()) {
                        met.add("blurred");
                        continue;
                    }
                    if (account.cohorts().size() > 1) {
                        met.add("several");
                    }
                    for (Fates.Established how : Fates.Established.values()) {
                        if (account.count(how) > 0) {
                            met.add(how);
                        }
                    }
                    for (Fates.Saleable how : Fates.Saleable.values()) {
                        if (account.count(how) > 0) {
                            met.add(how);
                        }
                    }
                }
                return 0;
            });
        }
        assertTrue(met.contains("blurred") && met.contains("several"), met.toString());
        assertEquals(2 + Fates.Established.values().length + Fates.Saleable.values().length, met.size(), met::toString);
    }
}
