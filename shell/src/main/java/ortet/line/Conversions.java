package ortet.line;

import java.math.BigDecimal;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;
import org.springframework.beans.factory.config.ConfigurableListableBeanFactory;
import org.springframework.core.ResolvableType;
import org.springframework.core.convert.TypeDescriptor;
import org.springframework.core.convert.converter.ConditionalGenericConverter;
import org.springframework.core.convert.converter.Converter;
import org.springframework.core.convert.support.GenericConversionService;
import ortet.entry.Words;

/**
 * Turns words into values: text, numbers, days, files, constants, and whatever a {@code Converter<String, T>} bean or a
 * {@code Converter<TypedWords, T>} bean adds.
 *
 * <p>A converter refuses a word by any exception whose message ends the sentence {@code --count of layer set: …}; an
 * {@link IllegalArgumentException} will do.
 */
public final class Conversions {
    private Conversions() {}

    /**
     * Return a service that knows the plain types.
     *
     * @param today what {@code today} and {@code yesterday} count from
     */
    public static GenericConversionService plain(Supplier<LocalDate> today) {
        GenericConversionService service = new GenericConversionService();
        service.addConverter(String.class, String.class, word -> word);
        service.addConverter(String.class, Boolean.class, Conversions::yesOrNo);
        service.addConverter(
                String.class, Integer.class, word -> (int) whole(word, Integer.MIN_VALUE, Integer.MAX_VALUE));
        service.addConverter(String.class, Long.class, word -> whole(word, Long.MIN_VALUE, Long.MAX_VALUE));
        service.addConverter(String.class, Double.class, word -> number(word).doubleValue());
        service.addConverter(String.class, BigDecimal.class, Conversions::number);
        service.addConverter(String.class, Path.class, Conversions::file);
        service.addConverter(String.class, LocalDate.class, word -> day(word, today));
        service.addConverter(new Constants());
        return service;
    }

    /**
     * Add every converter bean that starts from {@link String} or {@link TypedWords}; the bean itself is made at its first
     * use.
     */
    public static void addBeans(GenericConversionService service, ConfigurableListableBeanFactory beans) {
        for (String name : beans.getBeanNamesForType(Converter.class, false, false)) {
            ResolvableType type =
                    beans.getMergedBeanDefinition(name).getResolvableType().as(Converter.class);
            Class<?> source = type.getGeneric(0).resolve(Object.class);
            if (source == String.class) {
                add(service, String.class, target(type, name), beans, name);
            } else if (source == TypedWords.class) {
                add(service, TypedWords.class, target(type, name), beans, name);
            }
        }
    }

    private static Class<?> target(ResolvableType type, String name) {
        Class<?> target = type.getGeneric(1).resolve();
        if (target == null) {
            throw new IllegalStateException("the converter bean " + name + " does not tell what it makes");
        }
        return target;
    }

    private static <S, T> void add(
            GenericConversionService service,
            Class<S> source,
            Class<T> target,
            ConfigurableListableBeanFactory beans,
            String name) {
        service.addConverter(source, target, word -> {
            @SuppressWarnings("unchecked")
            Converter<S, T> converter = (Converter<S, T>) beans.getBean(name, Converter.class);
            return converter.convert(word);
        });
    }

    private static boolean yesOrNo(String word) {
        if (word.equals("yes")) {
            return true;
        }
        if (word.equals("no")) {
            return false;
        }
        throw new IllegalArgumentException("\"" + word + "\" is neither yes nor no");
    }

    private static long whole(String word, long least, long most) {
        if (!word.matches("[+-]?[0-9]+")) {
            throw new IllegalArgumentException("\"" + word + "\" is not a whole number");
        }
        try {
            long value = Long.parseLong(word);
            if (value >= least && value <= most) {
                return value;
            }
        } catch (NumberFormatException tooLong) {
            // said below
        }
        throw new IllegalArgumentException(word + " is out of range; expected " + least + " to " + most);
    }

    private static BigDecimal number(String word) {
        if (!word.matches("[+-]?([0-9]{1,18}([.][0-9]{0,18})?|[.][0-9]{1,18})")) {
            boolean comma = word.matches("[+-]?[0-9]+,[0-9]+");
            throw new IllegalArgumentException(
                    "\"" + word + "\" is not a number" + (comma ? "; write " + word.replace(',', '.') : ""));
        }
        return new BigDecimal(word);
    }

    private static Path file(String word) {
        if (word.isEmpty()) {
            throw new IllegalArgumentException("\"\" names no file");
        }
        try {
            return Path.of(word);
        } catch (InvalidPathException e) {
            throw new IllegalArgumentException("\"" + word + "\" cannot be a file's name", e);
        }
    }

    private static LocalDate day(String word, Supplier<LocalDate> today) {
        if (word.equals("today")) {
            return today.get();
        }
        if (word.equals("yesterday")) {
            return today.get().minusDays(1);
        }
        if (word.matches("[0-9]{4}-[0-9]{2}-[0-9]{2}")) {
            try {
                return LocalDate.parse(word);
            } catch (DateTimeException e) {
                throw new IllegalArgumentException("there is no day " + word, e);
            }
        }
        throw new IllegalArgumentException("\"" + word + "\" is not a day; expected yyyy-mm-dd, today or yesterday");
    }

    /** Return the refusal of a word that is none of those allowed. */
    static IllegalArgumentException noneOf(String word, List<String> allowed) {
        return new IllegalArgumentException(
                "no \"" + word + "\"; expected one of " + String.join(", ", allowed) + Near.orElse(word, allowed, ""));
    }

    private static final class Constants implements ConditionalGenericConverter {
        @Override
        public boolean matches(TypeDescriptor source, TypeDescriptor target) {
            return target.getType().isEnum();
        }

        @Override
        public Set<ConvertiblePair> getConvertibleTypes() {
            return Set.of(new ConvertiblePair(String.class, Enum.class));
        }

        @Override
        @SuppressWarnings({"unchecked", "rawtypes"})
        public Object convert(Object source, TypeDescriptor from, TypeDescriptor to) {
            return Words.parse((Class) to.getType(), (String) source);
        }
    }
}
