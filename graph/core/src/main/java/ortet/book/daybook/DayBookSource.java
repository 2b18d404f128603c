package ortet.book.daybook;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ortet.book.EntrySource;
import ortet.book.Intake;
import ortet.book.Progress;
import ortet.entry.EntryId;
import ortet.entry.Proposed;
import ortet.plant.Person;
import ortet.value.Warning;
import ortet.value.Where;

/** Reads the rows of day books for a book that has no entries, without keeping them. */
final class DayBookSource implements EntrySource {
    private final List<Source> sources;
    private final Optional<String> named;
    private final Persons persons;
    private final Faults faults = new Faults();
    private final List<Warning> repeats = new ArrayList<>();

    /** Make a source of files that are there, for a book that knows these persons. */
    DayBookSource(List<Source> sources, Optional<String> named, Persons persons) {
        this.sources = sources;
        this.named = named;
        this.persons = persons;
    }

    @Override
    public void read(Intake intake, Progress progress) {
        for (Source source : sources) {
            if (DayBook.isPersons(source)) {
                persons.list(source, faults, progress);
            }
        }
        for (Source source : sources) {
            if (!DayBook.isPersons(source)) {
                Sheet sheet = new Sheet(source, Columns.OF_DAY_BOOK, faults);
                new RowReader(sheet, named.orElse(source.name()), persons::number, faults, taker(sheet, intake), (int)
                                intake.size())
                        .readAll(progress);
            }
        }
        faults.refuse();
    }

    private RowReader.Taker taker(Sheet sheet, Intake intake) {
        return new RowReader.Taker() {
            @Override
            public int take(Proposed proposed, Row row) {
                Where where = sheet.where(row.line());
                int before = number(proposed.id());
                if (before == 0) {
                    intake.take(proposed, where);
                    return (int) intake.size();
                }
                Repeat.of(
                                intake.entry(before).proposed(),
                                intake.where(before).orElseThrow(),
                                proposed,
                                where,
                                sheet,
                                faults)
                        .ifPresent(repeats::add);
                return before;
            }

            @Override
            public EntryId id(int number) {
                return intake.entry(number).proposed().id();
            }

            @Override
            public int number(EntryId id) {
                return (int) intake.order(id);
            }
        };
    }

    @Override
    public List<Person> persons() {
        return persons.added();
    }

    @Override
    public List<Warning> remarks() {
        List<Warning> remarks = new ArrayList<>(persons.remarks());
        remarks.addAll(repeats);
        return remarks;
    }

    @Override
    public int repeated() {
        return repeats.size();
    }
}
