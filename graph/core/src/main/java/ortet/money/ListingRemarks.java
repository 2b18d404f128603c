package ortet.money;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import ortet.book.BookView;
import ortet.inventory.InUse;
import ortet.inventory.Places;
import ortet.plant.CultivarName;
import ortet.plant.Place;
import ortet.value.Folded;
import ortet.value.Nearest;

/**
 * Remarks on names in a listing of costs or prices that nothing in the book bears: such a listing is kept, for it may be of
 * what is still to come, but a misspelt one would never be used and nobody would notice. So too on a currency that is not that of all the others.
 */
public final class ListingRemarks {
    private static final List<String> MATERIALS = List.of("medium", "wrap", "hormone");

    private final BookView view;
    private final LocalDate today;
    private final List<String> remarks = new ArrayList<>();

    /** Look for names in a view of the book, while it lasts. */
    public ListingRemarks(BookView view, LocalDate today) {
        this.view = view;
        this.today = today;
    }

    /** Remark on a size class in which nothing was graded, where another is near. */
    public void size(String size) {
        if (!size.equalsIgnoreCase(Tariff.UNGRADED)) {
            remark("nothing was graded in the size class", size, InUse.sizes(view));
        }
    }

    /** Remark on a container into which nothing was put, where another is near. */
    public void container(Optional<String> container) {
        container.ifPresent(name -> remark("nothing was put into", name, InUse.containers(view)));
    }

    /** Remark on a material that no entry names of late, where another is near. */
    public void material(String material) {
        Set<String> known = new TreeSet<>(InUse.containers(view));
        MATERIALS.forEach(column -> known.addAll(InUse.texts(view, column)));
        remark("no entry names the material", material, known);
    }

    /** Remark on a place that the book does not know, where another is near. */
    public void place(Optional<Place> place) {
        place.ifPresent(name -> remark(
                "the book knows no place",
                name.toString(),
                Places.of(view).all().stream().map(known -> known.name()).toList()));
    }

    /** Remark on money in another currency than all that is listed: what is in two cannot be added. */
    public void currency(Currency currency) {
        Set<String> known = Tariff.of(view, today).currencies().keySet();
        if (!known.isEmpty() && !known.contains(currency.getCurrencyCode())) {
            remarks.add("all else is listed in " + String.join(" and ", known) + ", and what is in "
                    + currency.getCurrencyCode() + " cannot be added to it");
        }
    }

    /** Remark on a cultivar or botanical name that nothing in the book bears. */
    public void cultivar(Optional<CultivarName> cultivar) {
        Collection<CultivarName> known = InUse.cultivars(view);
        cultivar.filter(name -> known.stream().noneMatch(used -> isOf(used, name)))
                .ifPresent(name -> remarks.add("nothing in the book is of " + name
                        + Nearest.of(
                                        name.toString(),
                                        known.stream()
                                                .map(CultivarName::toString)
                                                .toList())
                                .map(near -> "; nearest: " + near)
                                .orElse("")));
    }

    private static boolean isOf(CultivarName used, CultivarName listed) {
        return used.equals(listed)
                || listed.epithet().isEmpty() && (used.taxon() + " ").startsWith(listed.taxon() + " ");
    }

    /** Remark on a name that is not known but near to one that is; 2 L and 3 L are near in letters alone. */
    private void remark(String what, String name, Collection<String> known) {
        if (known.stream().noneMatch(one -> plain(one).equals(plain(name)))) {
            List<String> alike = known.stream()
                    .filter(one -> digits(one).equals(digits(name)))
                    .toList();
            Nearest.of(name, alike).ifPresent(near -> remarks.add(what + " \"" + name + "\" yet; nearest: " + near));
        }
    }

    private static String digits(String text) {
        return text.replaceAll("\\D+", " ").strip();
    }

    /** Return words without blanks, upper and lower case alike: {@code 2 L} and {@code 2l} are one container. */
    private static String plain(String words) {
        return Folded.of(words).replaceAll("\\s+", "");
    }

    /** Return what there is to remark. */
    public List<String> remarks() {
        return List.copyOf(remarks);
    }
}
