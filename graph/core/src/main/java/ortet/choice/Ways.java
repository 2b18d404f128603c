package ortet.choice;

import java.util.List;
import ortet.value.Require;

/**
 * The ways to raise trees of one cultivar.
 *
 * @param cultivar as the mothers and the outlets name it
 * @param layers by diameter band of the stem, the ways to raise a layer set there; an empty list where none is worth it
 * @param cuttings the ways to raise a cutting; empty where none are taken
 */
public record Ways(String cultivar, List<List<Raising>> layers, List<Raising> cuttings) {
    public Ways {
        cultivar = Require.text(cultivar, "cultivar");
        layers = layers.stream().map(List::copyOf).toList();
        cuttings = List.copyOf(cuttings);
    }
}
