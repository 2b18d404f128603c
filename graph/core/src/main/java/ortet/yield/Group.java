package ortet.yield;

import java.util.Objects;
import java.util.Optional;

/**
 * What the units of a row have in common.
 *
 * @param by in what respect
 * @param value the cultivar, the tag, the method's word, the year or the person; absent where it is not known
 * @param shown what to call the group: the value, or that it is not known
 */
public record Group(TakeBy by, Optional<String> value, String shown) {
    public Group {
        Objects.requireNonNull(by);
        Objects.requireNonNull(value);
        Objects.requireNonNull(shown);
    }

    static Group known(TakeBy by, String value) {
        return new Group(by, Optional.of(value), value);
    }

    static Group known(TakeBy by, String value, String shown) {
        return new Group(by, Optional.of(value), shown);
    }

    static Group unknown(TakeBy by) {
        return new Group(by, Optional.empty(), by.unknown());
    }

    @Override
    public String toString() {
        return shown;
    }
}
