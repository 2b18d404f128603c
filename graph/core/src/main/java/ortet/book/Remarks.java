package ortet.book;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import ortet.entry.Acquired;
import ortet.entry.CuttingsStruck;
import ortet.entry.Entry;
import ortet.entry.EntryKind;
import ortet.entry.Form;
import ortet.entry.GraftWorked;
import ortet.entry.LayerSet;
import ortet.entry.PriceListed;
import ortet.entry.Redetermined;
import ortet.entry.SeedSown;
import ortet.entry.Share;
import ortet.entry.SportFound;
import ortet.entry.Wood;
import ortet.plant.CultivarName;
import ortet.plant.Place;
import ortet.plant.Tag;
import ortet.plant.Tags;
import ortet.plant.UnitNumber;
import ortet.value.Decimal;
import ortet.value.Nearest;

/** Remarks on what is odd but possible in new entries; the rules are in {@code docs/rules.md}. */
final class Remarks {
    /** Narrowest and widest ring, in stem diameters, that nobody wonders at (common practice; see the rules' page). */
    private static final BigDecimal NARROWEST = new BigDecimal("0.8");

    private static final BigDecimal WIDEST = new BigDecimal("2.5");

    private final Witness others;
    private final Listings listings;
    private final Map<String, Optional<String>> near = new HashMap<>();

    Remarks(Witness others, Listings listings) {
        this.others = others;
        this.listings = listings;
    }

    void on(Strand strand) {
        Entry entry = strand.entry();
        LocalDate day = strand.day().first();
        if (entry instanceof LayerSet set) {
            ring(strand, set);
            below(strand, set);
            boolean fromBelow = set.belowUnion().orElse(false);
            others.resolve(fromBelow ? set.tags().get(0) : set.mother())
                    .flatMap(unit -> others.cultivar(unit, day))
                    .ifPresent(name -> guarded(strand, name, day));
            if (fromBelow) {
                union(strand, List.of(set.mother()));
            }
        } else if (entry instanceof CuttingsStruck struck) {
            cuttings(strand, struck, day);
        } else if (entry instanceof GraftWorked graft) {
            if (graft.scion().isEmpty()) {
                remark(strand, "mother-unrecorded", "no scion plant is named");
            }
            graft.scion().ifPresent(scion -> differs(strand, graft.cultivar(), scion, day));
            graft.cultivar().ifPresent(name -> guarded(strand, name, day));
            listed(strand, graft.cultivar());
            listed(strand, graft.stockCultivar());
        } else if (entry instanceof SeedSown sown) {
            if (sown.seedParent().isEmpty() && sown.supplier().isEmpty()) {
                remark(strand, "mother-unrecorded", "neither the plant that bore the seed nor a supplier is named");
            }
            sown.cultivar()
                    .filter(name -> !listings.isSeedRaised(name))
                    .ifPresent(name -> remark(
                            strand, "seedling-clonal-name", "seedlings do not keep the name of a clone, " + name));
            listed(strand, sown.cultivar());
        } else if (entry instanceof Acquired acquired) {
            listed(strand, acquired.cultivar());
        } else if (entry instanceof SportFound sport) {
            listed(strand, sport.cultivar());
        } else if (entry instanceof Redetermined redetermined) {
            listed(strand, Optional.of(redetermined.cultivar()));
        } else if (entry instanceof PriceListed price) {
            listed(strand, price.cultivar().filter(name -> name.epithet().isPresent()));
        }
        place(strand);
    }

    private void remark(Strand strand, String rule, String text) {
        List<Tag> tags = strand.entry().tags();
        others.remark(strand.recorded().order(), rule, (tags.isEmpty() ? "" : Tags.brief(tags) + ": ") + text);
    }

    private void ring(Strand strand, LayerSet set) {
        if (set.ringMm().isEmpty()
                || set.stemMm().isEmpty()
                || set.ringMm().get().signum() == 0) {
            return;
        }
        BigDecimal ring = set.ringMm().get().value();
        BigDecimal stem = set.stemMm().get().value();
        if (ring.compareTo(stem.multiply(NARROWEST)) < 0 || ring.compareTo(stem.multiply(WIDEST)) > 0) {
            remark(
                    strand,
                    "ring-width",
                    "a ring of " + set.ringMm().get() + " mm on a stem of "
                            + set.stemMm().get()
                            + " mm; about one stem diameter is usual, twice is the widest advised");
        }
    }

    private void below(Strand strand, LayerSet set) {
        Optional<UnitNumber> mother = others.resolve(set.mother());
        if (mother.isEmpty()
                || set.below().isEmpty()
                        && (set.branch().isEmpty() || set.heightMm().isEmpty())) {
            return;
        }
        LocalDate day = strand.day().first();
        if (set.below().isPresent()) {
            others.resolve(set.below().get())
                    .flatMap(others::story)
                    .filter(story -> story.isPending(day))
                    .ifPresent(story -> below(strand, set.below().get()));
            return;
        }
        for (Event event : others.layersOf(mother.get())) {
            LayerSet other = (LayerSet) event.entry();
            boolean above = event.order() != strand.recorded().order()
                    && other.branch().equals(set.branch())
                    && other.heightMm().filter(height -> isAbove(height, set)).isPresent()
                    && !event.day().first().isAfter(day);
            if (above) {
                Optional<Tag> still = other.tags().stream()
                        .filter(tag -> others.resolve(tag)
                                .flatMap(others::story)
                                .filter(story -> story.isPending(day))
                                .isPresent())
                        .findFirst();
                if (still.isPresent()) {
                    below(strand, still.get());
                    return;
                }
            }
        }
    }

    private static boolean isAbove(Decimal height, LayerSet set) {
        return height.compareTo(set.heightMm().orElseThrow()) > 0;
    }

    private void below(Strand strand, Tag other) {
        remark(strand, "wound-below", "a wound below " + other + ", which is still on the same branch");
    }

    private void cuttings(Strand strand, CuttingsStruck struck, LocalDate day) {
        if (struck.mothers().isEmpty()) {
            remark(strand, "mother-unrecorded", "no mother is named");
        }
        boolean fromBelow = struck.belowUnion().orElse(false);
        List<Tag> mothers = struck.mothers().stream().map(Share::tag).toList();
        if (fromBelow) {
            union(strand, mothers);
        } else {
            mothers.forEach(mother -> differs(strand, struck.cultivar(), mother, day));
        }
        Optional<CultivarName> name = struck.cultivar()
                .or(() -> (fromBelow ? struck.tags() : mothers)
                        .stream().findFirst().flatMap(others::resolve).flatMap(unit -> others.cultivar(unit, day)));
        if (struck.wood().filter(wood -> wood == Wood.ROOT).isPresent()
                && name.filter(listings::isChimera).isPresent()) {
            remark(strand, "chimera-root-cuttings", name.get() + " is a chimera; root cuttings do not keep it");
        }
        name.ifPresent(cultivar -> guarded(strand, cultivar, day));
        listed(strand, struck.cultivar());
    }

    private void union(Strand strand, List<Tag> mothers) {
        for (Tag mother : mothers) {
            if (others.resolve(mother)
                    .map(unit -> Union.of(others, unit))
                    .filter(union -> !union.isSure())
                    .isPresent()) {
                remark(strand, "union-unrecorded", "the book does not say that " + mother + " is a graft");
            }
        }
    }

    private void differs(Strand strand, Optional<CultivarName> said, Tag mother, LocalDate day) {
        if (said.isEmpty()) {
            return;
        }
        others.resolve(mother)
                .flatMap(unit -> others.cultivar(unit, day))
                .filter(hers -> !hers.equals(said.get()))
                .ifPresent(hers -> remark(
                        strand, "cultivar-differs", "said to be " + said.get() + ", but " + mother + " is " + hers));
    }

    private void guarded(Strand strand, CultivarName name, LocalDate day) {
        if (listings.isProtected(name, day)) {
            remark(
                    strand,
                    "protected",
                    name + " is listed as protected and no licence is named; propagating it without the right holder's"
                            + " licence can be unlawful");
        }
    }

    private void listed(Strand strand, Optional<CultivarName> name) {
        if (name.isEmpty()
                || !listings.hasCultivars()
                || listings.cultivar(name.get()).isPresent()) {
            return;
        }
        String nearest = near.computeIfAbsent(
                        name.get().toString(),
                        text -> Nearest.of(
                                text,
                                listings.cultivars().stream()
                                        .map(listing -> listing.cultivar().toString())
                                        .toList()))
                .map(text -> "; nearest: " + text)
                .orElse("");
        remark(strand, "cultivar-unlisted", name.get() + " is not listed" + nearest);
    }

    private void place(Strand strand) {
        if (!listings.hasPlaces() || strand.entry().kind() == EntryKind.PLACE_LISTED) {
            return;
        }
        String text = Form.write(strand.entry(), "place").orElse("");
        if (text.isEmpty() || listings.place(new Place(text)).isPresent()) {
            return;
        }
        String nearest = near.computeIfAbsent(
                        "place " + text,
                        key -> Nearest.of(
                                text,
                                listings.places().stream()
                                        .map(listing -> listing.place().name())
                                        .toList()))
                .map(known -> "; nearest: " + known)
                .orElse("");
        remark(strand, "place-unlisted", text + " is not listed" + nearest);
    }
}
