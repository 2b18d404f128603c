package ortet.plant;

import java.util.Objects;
import java.util.Optional;
import ortet.value.Require;

/**
 * A person or firm that entries name by number; the particulars can be erased, the number stays.
 *
 * @param number the number that entries hold
 * @param name what people call them, unique among those not erased; empty once erased
 * @param role what they are to the nursery
 * @param particulars address, telephone and the like, where known
 */
public record Person(PersonNumber number, Optional<String> name, Role role, Optional<String> particulars) {
    /** What a person is to the nursery. */
    public enum Role {
        /** Works here. */
        STAFF,
        /** Buys. */
        CUSTOMER,
        /** Supplies. */
        SUPPLIER,
        /** Anything else, or not told. */
        OTHER
    }

    public Person {
        Objects.requireNonNull(number);
        Objects.requireNonNull(role);
        name = Require.text(name, "name");
        particulars = Require.text(particulars, "particulars");
        Require.that(name.isEmpty() || !PersonNumber.isWritten(name.get()), "name", "a name, not a number such as #7");
    }

    /** Return what to show for this person: the name, or the number once the name is erased. */
    public String shown() {
        return name.orElse(number.toString());
    }

    /** Return this person with name and particulars erased. */
    public Person erased() {
        return new Person(number, Optional.empty(), role, Optional.empty());
    }
}
