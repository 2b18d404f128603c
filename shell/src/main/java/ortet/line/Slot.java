package ortet.line;

import java.lang.reflect.Parameter;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Type;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import org.springframework.core.convert.TypeDescriptor;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Arguments;
import org.springframework.shell.core.command.annotation.Option;
import ortet.entry.Words;
import ortet.screen.Screen;

/**
 * One parameter of a command's method, or of a record that it takes, as a place on the line.
 *
 * @param kind how the value is given
 * @param longName the option's name without dashes, empty for words
 * @param shortName the option's letter, if it has one
 * @param index the position of a single word, 0 for the first; -1 where it has none
 * @param word what stands for the value in help, in capitals; empty for a flag
 * @param description what it means
 * @param required whether the line is refused without it
 * @param defaultValue the words taken when none are given; empty for none
 * @param many whether it may be given several times, or as a list with commas
 * @param element the type of one value
 * @param holder the type of the parameter itself
 * @param allowed the values that are allowed, empty if any
 * @param begins whether what is named is new and begins with this line
 */
record Slot(
        Kind kind,
        String longName,
        Optional<Character> shortName,
        int index,
        String word,
        String description,
        boolean required,
        String defaultValue,
        boolean many,
        TypeDescriptor element,
        Class<?> holder,
        List<String> allowed,
        boolean begins) {

    enum Kind {
        /** {@code --name VALUE}. */
        OPTION,
        /** {@code --name}, no value. */
        FLAG,
        /** One word at a fixed position. */
        ARGUMENT,
        /** All words that are left. */
        ARGUMENTS,
        /** The context of the call. */
        CONTEXT,
        /** What the command writes on. */
        SCREEN,
        /** Whom the command may ask back. */
        TALK
    }

    /** Return whether a parameter says by itself what fills it. */
    static boolean isOne(Parameter parameter) {
        return parameter.isAnnotationPresent(Option.class)
                || parameter.isAnnotationPresent(Argument.class)
                || parameter.isAnnotationPresent(Arguments.class)
                || parameter.getType() == CommandContext.class
                || parameter.getType() == Screen.class
                || parameter.getType() == Talk.class;
    }

    /**
     * Return the slot of a parameter.
     *
     * @throws IllegalStateException if its declaration is at odds with itself
     */
    static Slot of(Parameter parameter) {
        Class<?> holder = parameter.getType();
        Option option = parameter.getAnnotation(Option.class);
        Argument argument = parameter.getAnnotation(Argument.class);
        boolean rest = parameter.isAnnotationPresent(Arguments.class);
        if (option == null && argument == null && !rest) {
            if (holder == CommandContext.class) {
                return plain(Kind.CONTEXT, holder);
            }
            if (holder == Screen.class) {
                return plain(Kind.SCREEN, holder);
            }
            if (holder == Talk.class) {
                return plain(Kind.TALK, holder);
            }
            throw new IllegalStateException(
                    parameter.getDeclaringExecutable() + ": " + parameter.getName() + " is neither option nor word");
        }
        Optional<Word> shown = Optional.ofNullable(parameter.getAnnotation(Word.class));
        boolean many = List.class.isAssignableFrom(holder);
        boolean begins = shown.map(Word::begins).orElse(false);
        Class<?> elementType = elementType(parameter.getParameterizedType(), holder);
        TypeDescriptor element = TypeDescriptor.valueOf(elementType);
        List<String> allowed = shown.map(Word::allowed)
                .filter(words -> words.length > 0)
                .map(List::of)
                .orElseGet(() -> constants(elementType));
        if (option != null) {
            boolean flag = holder == boolean.class;
            boolean optional =
                    flag || many || isOptional(holder) || !option.defaultValue().isEmpty();
            if (!option.required() && !optional) {
                throw new IllegalStateException(parameter.getDeclaringExecutable() + ": " + parameter.getName()
                        + " is neither required nor Optional, and has no default");
            }
            String name = option.longName().isEmpty() ? kebab(parameter.getName()) : option.longName();
            return new Slot(
                    flag ? Kind.FLAG : Kind.OPTION,
                    name,
                    option.shortName() == ' ' ? Optional.empty() : Optional.of(option.shortName()),
                    -1,
                    flag ? "" : word(shown, elementType),
                    option.description(),
                    option.required(),
                    option.defaultValue(),
                    many,
                    element,
                    holder,
                    flag ? List.of() : allowed,
                    begins);
        }
        if (argument != null) {
            return new Slot(
                    Kind.ARGUMENT,
                    "",
                    Optional.empty(),
                    argument.index(),
                    word(shown, elementType),
                    argument.description(),
                    !isOptional(holder) && argument.defaultValue().isEmpty(),
                    argument.defaultValue(),
                    false,
                    element,
                    holder,
                    allowed,
                    begins);
        }
        return new Slot(
                Kind.ARGUMENTS,
                "",
                Optional.empty(),
                -1,
                word(shown, elementType),
                shown.map(Word::description).orElse(""),
                !isOptional(holder) && !shown.map(Word::optional).orElse(false),
                "",
                true,
                element,
                holder,
                allowed,
                begins);
    }

    private static Slot plain(Kind kind, Class<?> holder) {
        return new Slot(
                kind,
                "",
                Optional.empty(),
                -1,
                "",
                "",
                false,
                "",
                false,
                TypeDescriptor.valueOf(holder),
                holder,
                List.of(),
                false);
    }

    boolean isOption() {
        return kind == Kind.OPTION || kind == Kind.FLAG;
    }

    boolean isWord() {
        return kind == Kind.ARGUMENT || kind == Kind.ARGUMENTS;
    }

    /** Return whether one given value may hold several; in free text a comma is a comma. */
    boolean partsAtCommas() {
        return many && (element.getType() != String.class || !allowed.isEmpty());
    }

    /** Return how messages name it: {@code --count} or {@code TAG}. */
    String said() {
        return isOption() ? "--" + longName : word;
    }

    /** Return how the usage line shows it: {@code --count N}, {@code [--by WHAT]…}, {@code TAG…}. */
    String usage() {
        String bare = kind == Kind.OPTION ? said() + " " + word : said();
        String shown = required ? bare : "[" + bare + "]";
        return many ? shown + "…" : shown;
    }

    private static String word(Optional<Word> shown, Class<?> type) {
        Optional<String> own = shown.map(Word::value).filter(w -> !w.isEmpty());
        if (own.isPresent()) {
            return own.get();
        }
        if (type == LocalDate.class) {
            return "DAY";
        }
        if (type == Path.class) {
            return "FILE";
        }
        if (type == String.class) {
            return "TEXT";
        }
        if (type.isPrimitive() || Number.class.isAssignableFrom(type)) {
            return "N";
        }
        return kebab(type.getSimpleName()).toUpperCase(Locale.ROOT);
    }

    private static boolean isOptional(Class<?> type) {
        return type == Optional.class
                || type == OptionalInt.class
                || type == OptionalLong.class
                || type == OptionalDouble.class;
    }

    private static Class<?> elementType(Type type, Class<?> holder) {
        if (holder == OptionalInt.class) {
            return int.class;
        }
        if (holder == OptionalLong.class) {
            return long.class;
        }
        if (holder == OptionalDouble.class) {
            return double.class;
        }
        if (holder == Optional.class || List.class.isAssignableFrom(holder)) {
            Type inner = type instanceof ParameterizedType parameterized
                    ? parameterized.getActualTypeArguments()[0]
                    : String.class;
            if (inner instanceof Class<?> found) {
                return found;
            }
            throw new IllegalStateException("cannot read values of type " + inner);
        }
        return holder;
    }

    @SuppressWarnings("unchecked")
    private static List<String> constants(Class<?> type) {
        return type.isEnum() ? Words.all((Class<? extends Enum<?>>) type) : List.of();
    }

    private static String kebab(String camel) {
        StringBuilder words = new StringBuilder();
        for (int i = 0; i < camel.length(); i++) {
            char c = camel.charAt(i);
            if (Character.isUpperCase(c) && i > 0) {
                words.append('-');
            }
            words.append(Character.toLowerCase(c));
        }
        return words.toString();
    }
}
