package ortet.choice.inputs;

import java.util.Objects;
import ortet.value.Require;

/**
 * Where a figure comes from.
 *
 * @param of what it is of: a mother, a cultivar, or all
 * @param figure what it is
 * @param value it in words, with its unit
 * @param method how it was found
 * @param source what it was read from, or "common practice"
 */
public record Explained(String of, String figure, String value, String method, String source) {
    public Explained {
        of = Require.text(of, "of");
        figure = Require.text(figure, "figure");
        Objects.requireNonNull(value);
        Objects.requireNonNull(method);
        Objects.requireNonNull(source);
    }
}
