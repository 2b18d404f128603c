package ortet.book.mapping;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import ortet.book.Receipt;
import ortet.value.Fault;
import ortet.value.Refused;
import ortet.value.Warning;

/**
 * What came of reading spreadsheets into a book, or of trying to.
 *
 * @param account what became of the rows
 * @param faults everything that is wrong, by file and line; rows with a fault are not taken
 * @param remarks what is odd but possible
 * @param receipt what was written, or would be; absent where nothing was
 */
public record Imported(Account account, List<Fault> faults, List<Warning> remarks, Optional<Receipt> receipt) {
    public Imported {
        Objects.requireNonNull(account);
        Objects.requireNonNull(receipt);
        faults = List.copyOf(faults);
        remarks = List.copyOf(remarks);
    }

    /**
     * Return this, unless nothing was written because of faults.
     *
     * @throws Refused with every fault
     */
    public Imported orRefuse() {
        if (receipt.isEmpty() && !faults.isEmpty()) {
            throw new Refused(faults);
        }
        return this;
    }
}
