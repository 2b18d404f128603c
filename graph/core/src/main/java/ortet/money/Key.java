package ortet.money;

import java.util.Optional;
import ortet.entry.CostListed;
import ortet.entry.CostListed.Sort;
import ortet.entry.Per;
import ortet.entry.Task;
import ortet.plant.Place;
import ortet.value.Folded;

/** What a cost is listed for: a later listing with the same key takes the place of an earlier one. */
record Key(
        Sort sort,
        Optional<Task> task,
        Optional<String> material,
        Optional<Place> place,
        Optional<String> container,
        Optional<String> size,
        Optional<Per> per) {

    static Key of(CostListed cost) {
        boolean counted = cost.sort() == Sort.WORK || cost.sort() == Sort.MATERIAL;
        return new Key(
                cost.sort(),
                cost.task(),
                cost.material().map(Key::plain),
                cost.place(),
                cost.container().map(Key::plain),
                cost.size().map(Key::plain),
                counted ? Optional.of(cost.per().orElse(Per.UNIT)) : Optional.empty());
    }

    static Key work(Task task, Optional<String> container, Per per) {
        return new Key(
                Sort.WORK,
                Optional.of(task),
                Optional.empty(),
                Optional.empty(),
                container.map(Key::plain),
                Optional.empty(),
                Optional.of(per));
    }

    static Key material(String material, Optional<String> container, Per per) {
        return new Key(
                Sort.MATERIAL,
                Optional.empty(),
                Optional.of(plain(material)),
                Optional.empty(),
                container.map(Key::plain),
                Optional.empty(),
                Optional.of(per));
    }

    static Key hour(Optional<Task> task) {
        return new Key(
                Sort.HOUR,
                task,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    static Key bench(Optional<Place> place) {
        return new Key(
                Sort.BENCH,
                Optional.empty(),
                Optional.empty(),
                place,
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    static Key space(Optional<Place> place, Optional<String> container, Optional<String> size) {
        return new Key(
                Sort.SPACE,
                Optional.empty(),
                Optional.empty(),
                place,
                container.map(Key::plain),
                size.map(Key::plain),
                Optional.empty());
    }

    /** Return words as they are compared: {@code 2 L}, {@code 2L} and {@code 2 l} are one container. */
    static String plain(String words) {
        return Folded.of(words.strip().replaceAll("(?<=\\d)\\s+(?=\\p{L})", "").replaceAll("\\s+", " "));
    }
}
