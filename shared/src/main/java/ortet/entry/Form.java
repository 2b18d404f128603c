package ortet.entry;

import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.function.IntFunction;
import ortet.plant.CultivarName;
import ortet.plant.PersonNumber;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.plant.Tags;
import ortet.value.Amount;
import ortet.value.Decimal;
import ortet.value.Defect;
import ortet.value.Fault;
import ortet.value.Money;
import ortet.value.OrtetException;
import ortet.value.Refused;
import ortet.value.Strength;
import ortet.value.When;

/**
 * The fields of one kind of entry as columns of text, and back.
 *
 * <p>The one place where a record's components become names ({@code stemMm} is the column {@code stem_mm}) and its
 * values become text: the day book, the canonical bytes, corrections and the commands all read and write entries here.
 * A field that is absent has no text. Lists are parted by blanks; no member of one has a blank in it.
 */
public final class Form {
    /** How the values of a field are written. */
    public enum Nature {
        /** Words as they are. */
        TEXT,
        /** A number. */
        NUMBER,
        /** One of a few words. */
        CHOICE,
        /** Yes or no. */
        YES_NO,
        /** A day, month or year. */
        DAY,
        /** One tag. */
        TAG,
        /** Several tags. */
        TAGS,
        /** A person's number. */
        PERSON,
        /** Anything else with a form of its own. */
        OTHER
    }

    /**
     * One column of a kind.
     *
     * @param name the column's name
     * @param nature how its values are written
     * @param required whether a value must be there
     * @param choices the words allowed, where only a few are
     */
    public record Field(String name, Nature nature, boolean required, List<String> choices) {
        public Field {
            choices = List.copyOf(choices);
        }
    }

    private record Codec(
            Nature nature, Class<?> type, Function<String, Object> parse, Function<Object, String> print) {}

    private enum Shape {
        PLAIN,
        OPTIONAL,
        LIST
    }

    private record Slot(Field field, Shape shape, Codec codec, Method get) {}

    private final EntryKind kind;
    private final List<Slot> slots;
    private final List<Field> fields;
    private final Constructor<? extends Entry> make;

    private Form(EntryKind kind) {
        this.kind = kind;
        RecordComponent[] components = kind.type().getRecordComponents();
        slots = Arrays.stream(components).map(Form::slot).toList();
        fields = slots.stream().map(Slot::field).toList();
        try {
            make = kind.type()
                    .getDeclaredConstructor(Arrays.stream(components)
                            .map(RecordComponent::getType)
                            .toArray(Class<?>[]::new));
        } catch (NoSuchMethodException broken) {
            throw new Defect("no form for " + kind.word(), broken);
        }
    }

    /** Return the form of a kind. */
    public static Form of(EntryKind kind) {
        Form known = FORMS.get(kind);
        return known != null ? known : FORMS.computeIfAbsent(kind, Form::new);
    }

    /** Return every column that some kind has, in the order of first use, with one of its fields. */
    public static Map<String, Field> columns() {
        Map<String, Field> columns = new LinkedHashMap<>();
        for (EntryKind kind : EntryKind.values()) {
            of(kind).fields.forEach(field -> columns.putIfAbsent(field.name(), field));
        }
        return Collections.unmodifiableMap(columns);
    }

    /** Return the columns of this kind, in order. */
    public List<Field> fields() {
        return fields;
    }

    /** Return the column of that name, where this kind has it. */
    public Optional<Field> field(String name) {
        return fields.stream().filter(field -> field.name().equals(name)).findFirst();
    }

    /** Return the texts of an entry's fields by column, in order, without those that are absent. */
    public static Map<String, String> write(Entry entry) {
        Form form = of(entry.kind());
        Map<String, String> texts = new LinkedHashMap<>();
        for (Slot slot : form.slots) {
            String text = form.text(slot, entry);
            if (!text.isEmpty()) {
                texts.put(slot.field().name(), text);
            }
        }
        return texts;
    }

    /** Return the text of one field of an entry, where the kind has it and it is not absent. */
    public static Optional<String> write(Entry entry, String column) {
        Form form = of(entry.kind());
        for (Slot slot : form.slots) {
            if (slot.field().name().equals(column)) {
                return Optional.of(form.text(slot, entry)).filter(text -> !text.isEmpty());
            }
        }
        return Optional.empty();
    }

    private String text(Slot slot, Entry entry) {
        Object value = value(slot, entry);
        return switch (slot.shape()) {
            case PLAIN -> slot.codec().print().apply(value);
            case OPTIONAL ->
                ((Optional<?>) value)
                        .map(present -> slot.codec().print().apply(present))
                        .orElse("");
            case LIST -> joined((List<?>) value, slot.codec());
        };
    }

    private static String joined(List<?> values, Codec codec) {
        StringBuilder text = new StringBuilder();
        for (Object value : values) {
            if (text.length() > 0) {
                text.append(' ');
            }
            text.append(codec.print().apply(value));
        }
        return text.toString();
    }

    /**
     * Read an entry from the texts of its fields; blank texts are absent.
     *
     * @throws Refused with every field that is wrong, each fault's rule naming what is wrong and its text beginning
     *     with the column
     */
    public Entry read(Map<String, String> texts) {
        List<Fault> unused = new ArrayList<>();
        for (String column : texts.keySet()) {
            if (!texts.get(column).isBlank() && field(column).isEmpty()) {
                unused.add(Fault.of(
                        "unused-column",
                        column + ": " + kind.word() + " has no such column; it has "
                                + String.join(
                                        ", ", fields.stream().map(Field::name).toList())));
            }
        }
        return read(at -> texts.getOrDefault(fields.get(at).name(), ""), unused);
    }

    /**
     * Read an entry from the texts of its fields by their places in {@link #fields()}, from 0; blank texts are absent.
     *
     * @throws Refused as {@link #read(Map)} does
     */
    public Entry read(IntFunction<String> texts) {
        return read(texts, List.of());
    }

    private Entry read(IntFunction<String> texts, List<Fault> found) {
        List<Fault> faults = new ArrayList<>();
        Object[] values = new Object[slots.size()];
        for (int at = 0; at < values.length; at++) {
            Slot slot = slots.get(at);
            String text = texts.apply(at).strip();
            try {
                values[at] = read(slot, text);
            } catch (Refused refused) {
                for (Fault fault : refused.faults()) {
                    String name = slot.field().name() + ": ";
                    String told = fault.text().startsWith(name) ? fault.text() : name + fault.text();
                    faults.add(new Fault(fault.rule(), fault.where(), told, fault.nearest()));
                }
            }
        }
        faults.addAll(found);
        if (!faults.isEmpty()) {
            throw new Refused(faults);
        }
        try {
            return make.newInstance(values);
        } catch (InvocationTargetException thrown) {
            if (thrown.getCause() instanceof OrtetException refused) {
                throw refused;
            }
            throw new Defect("cannot make " + kind.word(), thrown.getCause());
        } catch (ReflectiveOperationException broken) {
            throw new Defect("cannot make " + kind.word(), broken);
        }
    }

    private static Object read(Slot slot, String text) {
        if (slot.shape() == Shape.LIST) {
            if (text.isEmpty()) {
                return List.of();
            }
            if (slot.field().nature() == Nature.TAGS) {
                return Tags.parse(text);
            }
            List<Object> values = new ArrayList<>();
            for (String word : text.split("[\\s,]+")) {
                values.add(slot.codec().parse().apply(word));
            }
            return List.copyOf(values);
        }
        if (text.isEmpty()) {
            if (slot.shape() == Shape.PLAIN) {
                throw Refused.because("missing-value", "must not be empty");
            }
            return Optional.empty();
        }
        Object value = slot.codec().parse().apply(text);
        return slot.shape() == Shape.OPTIONAL ? Optional.of(value) : value;
    }

    private Object value(Slot slot, Entry entry) {
        try {
            return slot.get().invoke(entry);
        } catch (ReflectiveOperationException broken) {
            throw new Defect("cannot read " + slot.field().name() + " of " + kind.word(), broken);
        }
    }

    private static Slot slot(RecordComponent component) {
        Type type = component.getGenericType();
        Shape shape = Shape.PLAIN;
        if (type instanceof ParameterizedType parameterized) {
            shape = parameterized.getRawType() == Optional.class ? Shape.OPTIONAL : Shape.LIST;
            type = parameterized.getActualTypeArguments()[0];
        }
        Codec codec = codec((Class<?>) type);
        Nature nature =
                shape == Shape.LIST ? (codec.nature() == Nature.TAG ? Nature.TAGS : Nature.OTHER) : codec.nature();
        Field field = new Field(
                column(component.getName()),
                nature,
                shape == Shape.PLAIN,
                nature == Nature.CHOICE ? choices((Class<?>) type) : List.of());
        return new Slot(field, shape, codec, component.getAccessor());
    }

    /** Return the column that holds a component: {@code stemMm} is {@code stem_mm}. */
    static String column(String component) {
        StringBuilder name = new StringBuilder();
        for (char letter : component.toCharArray()) {
            if (Character.isUpperCase(letter)) {
                name.append('_').append(Character.toLowerCase(letter));
            } else {
                name.append(letter);
            }
        }
        return name.toString();
    }

    @SuppressWarnings({"unchecked", "rawtypes"})
    private static List<String> choices(Class<?> type) {
        return Words.all((Class<? extends Enum<?>>) (Class) type);
    }

    @SuppressWarnings({"unchecked", "rawtypes"})
    private static Codec codec(Class<?> type) {
        if (type.isEnum()) {
            return new Codec(
                    Nature.CHOICE, type, text -> Words.parse((Class) type, text), value -> Words.of((Enum<?>) value));
        }
        Codec codec = CODECS.get(type);
        if (codec == null) {
            throw new Defect("no way to write " + type);
        }
        return codec;
    }

    private static final Map<Class<?>, Codec> CODECS = codecs(
            codec(Nature.TEXT, String.class, text -> text),
            codec(Nature.NUMBER, int.class, text -> Counts.parse(text, text)),
            codec(Nature.NUMBER, Integer.class, text -> Counts.parse(text, text)),
            codec(Nature.NUMBER, Decimal.class, Decimal::parse),
            new Codec(Nature.YES_NO, Boolean.class, Form::yesNo, value -> (Boolean) value ? "yes" : "no"),
            codec(Nature.DAY, When.class, When::parse),
            codec(Nature.TAG, Tag.class, Tag::new),
            codec(Nature.PERSON, PersonNumber.class, PersonNumber::parse),
            codec(Nature.OTHER, CultivarName.class, CultivarName::parse),
            codec(Nature.OTHER, Place.class, Place::new),
            codec(Nature.OTHER, Strength.class, Strength::parse),
            codec(Nature.OTHER, Money.class, Money::parse),
            codec(Nature.OTHER, Amount.class, Amount::parse),
            codec(Nature.OTHER, EntryId.class, EntryId::parse),
            codec(Nature.OTHER, Share.class, Share::parse),
            codec(Nature.OTHER, Finding.class, Finding::parse),
            codec(Nature.OTHER, Band.class, Band::parse));

    /** Made when first asked for: a line that is soon done needs a few of them. */
    private static final Map<EntryKind, Form> FORMS = new ConcurrentHashMap<>();

    private static Codec codec(Nature nature, Class<?> type, Function<String, Object> parse) {
        return new Codec(nature, type, parse, Object::toString);
    }

    private static Map<Class<?>, Codec> codecs(Codec... codecs) {
        Map<Class<?>, Codec> map = new LinkedHashMap<>();
        for (Codec codec : codecs) {
            map.put(codec.type(), codec);
        }
        return map;
    }

    private static Object yesNo(String text) {
        if (text.equalsIgnoreCase("yes")) {
            return Boolean.TRUE;
        }
        if (text.equalsIgnoreCase("no")) {
            return Boolean.FALSE;
        }
        throw Refused.because("bad-word", "expected yes or no, found \"" + text + "\"");
    }
}
