package ortet.seeds;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ortet.entry.Cause;
import ortet.plant.Person;
import ortet.plant.Place;
import ortet.plant.Tag;

/** A plant, layer, sport or batch, as the generator remembers it while it writes. */
final class Unit {
    /** What it is. */
    enum Nature {
        PLANT,
        LAYER,
        BATCH,
        SPORT
    }

    final Nature nature;
    final LocalDate begun;
    Tag tag;

    /** What it is believed to be. */
    Variety variety;

    int pending;
    int growing;
    Optional<Unit> mother = Optional.empty();
    Optional<Unit> rootstock = Optional.empty();
    /** The branch of its mother that a layer hangs on, and how high. */
    String branch = "";

    int woundMm;

    /** Every layer that was ever set on it. */
    final List<Unit> layers = new ArrayList<>();

    /** How many of what is pending in a tray are going to root. */
    int rooting;

    Optional<Place> place = Optional.empty();
    String container = "";
    double stemMm = 3;
    double heightMm = 150;

    /** What its wood adds to the log odds that a layer, cutting or graft from it takes. */
    double vigour;

    boolean held;
    boolean stock;
    boolean inGround;
    boolean graded;
    Optional<Person> promisedTo = Optional.empty();

    /** Steps from the oldest plant that the nursery knows of. */
    int generation;

    /** Whether a layer or graft is going to take, from which day, and why not. */
    boolean takes;

    LocalDate rootedOn = LocalDate.MAX;
    Cause cause = Cause.UNKNOWN;

    Unit(Nature nature, Tag tag, Variety variety, LocalDate begun) {
        this.nature = nature;
        this.tag = tag;
        this.variety = variety;
        this.begun = begun;
    }

    /** Return the layers that are still on it. */
    List<Unit> layersOn() {
        return layers.stream().filter(layer -> layer.pending == 1).toList();
    }

    /** Tell whether nothing is left under the tag. */
    boolean isGone() {
        return pending + growing == 0;
    }

    /** Tell whether this is one plant on its own roots, free to be worked with. */
    boolean isStanding() {
        return nature != Nature.BATCH && nature != Nature.SPORT && growing == 1;
    }

    /** Tell whether it may give wood. */
    boolean givesWood() {
        return !held && (growing > 0 || nature == Nature.SPORT);
    }

    @Override
    public String toString() {
        return tag.toString();
    }
}
