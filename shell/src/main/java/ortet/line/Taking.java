package ortet.line;

import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Parameter;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What one parameter of a command's method takes from the line: one slot, or, for a record whose components are slots,
 * several. Options that many commands share are declared once, in such a record.
 *
 * @param slots in the order of the components
 * @param record what makes the record of their values; empty where the one value is the parameter
 */
record Taking(List<Slot> slots, Optional<Constructor<?>> record) {
    static List<Taking> of(Method method) {
        List<Taking> takings = new ArrayList<>();
        Set<String> names = new HashSet<>();
        for (Parameter parameter : method.getParameters()) {
            Taking taking = of(parameter);
            takings.add(taking);
            for (Slot slot : taking.slots) {
                boolean twice = slot.isOption() && !names.add("--" + slot.longName());
                if (twice
                        || slot.shortName()
                                .filter(letter -> !names.add("-" + letter))
                                .isPresent()) {
                    throw new IllegalStateException(method + ": two options are called " + slot.said()
                            + slot.shortName().map(letter -> " or -" + letter).orElse(""));
                }
            }
        }
        return List.copyOf(takings);
    }

    private static Taking of(Parameter parameter) {
        Class<?> type = parameter.getType();
        if (Slot.isOne(parameter) || !type.isRecord()) {
            return new Taking(List.of(Slot.of(parameter)), Optional.empty());
        }
        Constructor<?> constructor = type.getDeclaredConstructors()[0];
        for (Constructor<?> other : type.getDeclaredConstructors()) {
            if (other.getParameterCount() == type.getRecordComponents().length
                    && Slot.isOne(other.getParameters()[0])) {
                constructor = other;
            }
        }
        constructor.setAccessible(true);
        List<Slot> slots = new ArrayList<>();
        for (Parameter component : constructor.getParameters()) {
            slots.add(Slot.of(component));
        }
        return new Taking(List.copyOf(slots), Optional.of(constructor));
    }

    /** Return the value of the parameter, made of the values of the slots. */
    Object value(List<Object> values) throws Exception {
        if (record.isEmpty()) {
            return values.get(0);
        }
        try {
            return record.get().newInstance(values.toArray());
        } catch (InvocationTargetException e) {
            throw MethodCommand.thrownIn(e);
        }
    }
}
