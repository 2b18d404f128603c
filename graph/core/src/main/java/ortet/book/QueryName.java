package ortet.book;

import ortet.value.Require;

/** The name of a question in {@code queries/}: small letters, digits and hyphens. */
public record QueryName(String name) {
    public QueryName {
        Require.that(name.matches("[a-z][a-z0-9-]{0,60}"), "question", "small letters, digits and hyphens");
    }

    @Override
    public String toString() {
        return name;
    }
}
