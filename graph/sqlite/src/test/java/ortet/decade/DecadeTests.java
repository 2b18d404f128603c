package ortet.decade;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import ortet.choice.inputs.InputsReader;
import ortet.decade.Accounts.Units;
import ortet.decade.Decades.Result;
import ortet.nursery.Snapshot;

/**
 * What a comparison over ten years rests on, in small nurseries and a few years. The whole of it takes an hour, and runs when
 * told where to leave its results ({@code -Dortet.decades=FILE}).
 */
class DecadeTests {
    private static final int LEAST = 7;
    private static final int MOST = 8;
    private static final int YEARS = 2;

    private static Truth truth(World world, Luck luck) {
        return new Truth(world, luck, LEAST, MOST);
    }

    private static Result play(World world, Player player) {
        return Decades.play(truth(world, new Luck(7)), 0, player, YEARS);
    }

    @Test
    void comesToTheSameFromTheSameSeed() {
        String once = Decades.line(play(World.RIGHT, Player.ADVICE));
        assertEquals(once, Decades.line(play(World.RIGHT, Player.ADVICE)));
        Result one = play(World.RIGHT, Player.PERCENTAGE_KEEP);
        Result other = Decades.play(truth(World.RIGHT, new Luck(8)), 0, Player.PERCENTAGE_KEEP, YEARS);
        assertNotEquals(Decades.line(one), Decades.line(other));
    }

    @ParameterizedTest
    @EnumSource(mode = EnumSource.Mode.EXCLUDE, names = "KNOWING")
    void leavesNothingOutOfTheAccounts(Player player) {
        Accounts accounts = play(World.UNWRITTEN_FAILURES, player).accounts();
        long ended = accounts.of(Units.FAILED)
                + accounts.of(Units.LOST)
                + accounts.of(Units.NEVER_FIT)
                + accounts.of(Units.SOLD)
                + accounts.of(Units.THROWN_AWAY)
                + accounts.of(Units.STANDING);
        assertTrue(accounts.of(Units.SOLD) > 0);
        assertEquals(accounts.of(Units.SET), ended);
        assertTrue(accounts.of(Units.ORDERS_MISSED) <= accounts.of(Units.ORDERED));
    }

    @Test
    void writesInTheBookWhatIsInTheAccounts() {
        Truth truth = truth(World.RIGHT, new Luck(7));
        try (Book book = new Book()) {
            Years years = new Years(truth, book);
            years.past();
            years.last(Truth.FIRST);
            years.go(Truth.FIRST, new ByRank(ByRank.Rank.PERCENTAGE, false));
            long standing = years.records().trees.size();
            long[] found = book.store().read(view -> {
                Snapshot snapshot = Snapshot.of(view, LocalDate.of(Truth.FIRST, 12, 31), InputsReader.parts());
                long[] counts = new long[2];
                for (int unit = 1; unit <= snapshot.lastUnit(); unit++) {
                    counts[0] += snapshot.growing(unit);
                    counts[1] += snapshot.pending(unit);
                }
                return counts;
            });
            assertEquals(standing + truth.mothers(), found[0]);
            assertEquals(0, found[1]);
        }
    }

    /** Remembers what was decided. */
    private record Noting(Policy policy, List<List<Doing>> decided) implements Policy {
        @Override
        public List<Doing> decide(Records records) {
            List<Doing> doings = policy.decide(records);
            decided.add(doings);
            return doings;
        }
    }

    private static List<List<Doing>> decided(Truth truth, Player player) {
        List<List<Doing>> decided = new ArrayList<>();
        try (Notebook notebook = player.needsBook() ? new Book() : Notebook.NONE) {
            Years years = new Years(truth, notebook);
            years.past();
            Policy policy = new Noting(player.policy(truth, notebook), decided);
            years.go(Truth.FIRST, policy);
            years.go(Truth.FIRST + 1, policy);
        }
        return decided;
    }

    @Test
    void letsNobodySeeWhatIsToCome() {
        Luck luck = new Luck(7);
        Map<Player, Boolean> changed = new HashMap<>();
        // but for the one who knows
        for (Player player : EnumSet.complementOf(EnumSet.of(Player.KNOWING))) {
            List<List<Doing>> one = decided(truth(World.RIGHT, luck), player);
            List<List<Doing>> other = decided(truth(World.RIGHT, luck.otherFrom(Truth.FIRST, 1)), player);
            assertEquals(one.get(0), other.get(0), player + " knew of what was still to come");
            changed.put(player, !one.get(1).equals(other.get(1)));
        }
        assertTrue(changed.get(Player.ADVICE), "what came made no difference a year later");
        assertTrue(changed.get(Player.PERCENTAGE_KEEP), "what came made no difference a year later");
    }

    @Test
    void givesEverybodyTheSameLuck() {
        // they differ in nothing before the third year
        assertEquals(
                play(World.STEMS, Player.THICKEST_KEEP).accounts().margin(),
                play(World.STEMS, Player.THICKEST_SELL).accounts().margin());
        Truth truth = truth(World.STEMS, new Luck(7));
        Truth again = truth(World.STEMS, new Luck(7));
        Truth.Fate fate = again.fate(3, 1, Truth.FIRST, 2);
        for (int number = 9; number > 2; number--) {
            truth.fate(3, 1, Truth.FIRST, number);
        }
        assertEquals(fate, truth.fate(3, 1, Truth.FIRST, 2));
    }

    @Test
    void tellsMeansAndIntervalsAsByHand() {
        List<String> lines = new ArrayList<>(List.of("world,nursery,player,margin"));
        for (Player player : Player.values()) {
            boolean isAdvice = player == Player.ADVICE;
            lines.add("RIGHT,0," + player + "," + (isAdvice ? 1100 : 1000));
            lines.add("RIGHT,1," + player + "," + (isAdvice ? 2300 : 2000));
        }
        // differences 100 and 300: mean 200, standard error 100, Student's t with one degree 12.706 (published tables)
        assertTrue(Summary.of(lines).contains("| **all** | +200 (-1,071 to +1,471) | 2 of 2 |"), Summary.of(lines));
    }

    @Test
    @EnabledIfSystemProperty(named = "ortet.decades", matches = ".+")
    void paysOverTenYears() throws Exception {
        Decades.main(new String[] {System.getProperty("ortet.decades"), System.getProperty("ortet.threads", "2")});
    }
}
