package ortet.book;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import ortet.plant.UnitNumber;

class CheckupTests {
    private final Diary diary = new Diary();
    private final Judge judge = new Judge(Clock.fixed(Instant.parse("2026-06-15T12:00:00Z"), ZoneOffset.UTC));

    private List<String> wrong(java.util.function.Function<BookView, BookView> changed) {
        return diary.store()
                .read(view -> Checkup.of(changed.apply(view), judge, Progress.NONE))
                .wrong();
    }

    private void write() {
        diary.write("2020-01-01 acquired K-1");
        diary.write("2020-05-01 layer-set J-1 J-2; mother=K-1");
        diary.write("2020-09-01 severed J-1");
    }

    @Test
    void findsNothingWrongWithABookThatWasNotTouched() {
        write();
        assertEquals(List.of(), wrong(view -> view));
    }

    @Property(tries = 40)
    void findsNothingWrongWithAnyHistory(@ForAll int seed) {
        RebuildTests.writeRandomHistory(diary, seed, 40);
        assertEquals(List.of(), wrong(view -> view));
    }

    @Test
    void namesTheFirstEntryThatIsNotAsItWasWritten() {
        write();
        assertEquals(
                List.of(
                        "entry 2 is not as it was written: its digest does not follow from it and the entries before it"),
                wrong(view -> new ForwardingView(view) {
                    @Override
                    public Stream<Chained> since(long order) {
                        return view.since(order)
                                .map(chained -> chained.recorded().order() == 2
                                        ? new Chained(chained.recorded(), Chain.START)
                                        : chained);
                    }
                }));
    }

    @Test
    void namesAnEntryThatIsMissing() {
        write();
        List<String> wrong = wrong(view -> new ForwardingView(view) {
            @Override
            public Stream<Chained> since(long order) {
                return view.since(order).filter(chained -> chained.recorded().order() != 2);
            }
        });
        assertEquals("expected entry 2, found entry 3", wrong.get(0));
        assertTrue(
                wrong.contains("whether the entries can be true was not looked at, since some are missing"),
                wrong.toString());
    }

    @Test
    void namesAUnitOfWhichSomethingElseIsKept() {
        write();
        assertEquals(
                List.of(
                        "what is kept of J-2 is missing, and does not follow from the entries; \"ortet book rebuild\" mends it"),
                wrong(view -> new ForwardingView(view) {
                    @Override
                    public Optional<UnitFacts> facts(UnitNumber unit) {
                        return unit.value() == 3 ? Optional.empty() : view.facts(unit);
                    }
                }));
    }
}
