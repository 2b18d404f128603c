package ortet.commands;

import java.time.LocalDate;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Command;
import ortet.book.BookStore;
import ortet.book.Judge;
import ortet.line.Word;
import ortet.lineage.Kin;
import ortet.plant.Tag;
import ortet.screen.Screen;

/** How two plants are related. */
public final class KinCommands {
    private final Shelf shelf;
    private final Judge judge;

    KinCommands(Shelf shelf, Judge judge) {
        this.shelf = shelf;
        this.judge = judge;
    }

    @Command(name = "kin", group = "Questions", description = "tell how two plants are related", help = """
            Whether they are one clone, their nearest common ancestors, and the coefficient of kinship: 1/2 for one clone that
            is not inbred, 1/4 for parent and offspring and for full sibs, 1/8 for half sibs. All ramets of a clone are one
            genotype. What was bought in is of unknown origin: it is never taken for unrelated, the coefficient is then
            "unknown, at least".
            ortet kin J-201 K-12
            ortet kin J-201 K-12 --format json
            """)
    void kin(
            @Argument(index = 0, description = "the one") @Word("TAG") Tag first,
            @Argument(index = 1, description = "the other") @Word("TAG") Tag second,
            Asked asked,
            CommandContext context,
            Screen screen) {
        BookStore store = shelf.open(context);
        LocalDate day = asked.day(store, judge);
        Kin kin = store.read(view -> Kin.of(view, first, second, day));
        screen.page(out -> KinView.show(kin, asked.format(), out));
    }
}
