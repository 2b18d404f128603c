package ortet.entry;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ortet.entry.Mention.Role;
import ortet.plant.Tag;

/** Tells which units each kind of entry names; amendments name none, for they act through the entry that they amend. */
final class Mentions implements Entry.Visitor<List<Mention>> {
    static final Mentions VISITOR = new Mentions();

    private Mentions() {}

    private static final class Found {
        private final List<Mention> mentions = new ArrayList<>();

        Found all(Role role, List<Tag> tags) {
            tags.forEach(tag -> mentions.add(new Mention(tag, role)));
            return this;
        }

        Found one(Role role, Tag tag) {
            mentions.add(new Mention(tag, role));
            return this;
        }

        Found maybe(Role role, Optional<Tag> tag) {
            tag.ifPresent(present -> one(role, present));
            return this;
        }

        List<Mention> list() {
            return List.copyOf(mentions);
        }
    }

    private static Found begun(Entry entry) {
        return new Found().all(Role.BEGUN, entry.tags());
    }

    private static List<Mention> about(Entry entry) {
        return new Found().all(Role.SUBJECT, entry.tags()).list();
    }

    @Override
    public List<Mention> cultivarListed(CultivarListed entry) {
        return List.of();
    }

    @Override
    public List<Mention> placeListed(PlaceListed entry) {
        return List.of();
    }

    @Override
    public List<Mention> costListed(CostListed entry) {
        return List.of();
    }

    @Override
    public List<Mention> priceListed(PriceListed entry) {
        return List.of();
    }

    @Override
    public List<Mention> acquired(Acquired entry) {
        return begun(entry).list();
    }

    @Override
    public List<Mention> layerSet(LayerSet entry) {
        return begun(entry)
                .one(Role.MOTHER, entry.mother())
                .maybe(Role.BESIDE, entry.above())
                .maybe(Role.BESIDE, entry.below())
                .list();
    }

    @Override
    public List<Mention> cuttingsStruck(CuttingsStruck entry) {
        return begun(entry)
                .all(Role.MOTHER, entry.mothers().stream().map(Share::tag).toList())
                .list();
    }

    @Override
    public List<Mention> graftWorked(GraftWorked entry) {
        return begun(entry)
                .maybe(Role.SCION, entry.scion())
                .maybe(Role.STOCK, entry.stock())
                .list();
    }

    @Override
    public List<Mention> seedSown(SeedSown entry) {
        return begun(entry)
                .maybe(Role.SEED_PARENT, entry.seedParent())
                .maybe(Role.POLLEN_PARENT, entry.pollenParent())
                .list();
    }

    @Override
    public List<Mention> divided(Divided entry) {
        return begun(entry).one(Role.MOTHER, entry.mother()).list();
    }

    @Override
    public List<Mention> sportFound(SportFound entry) {
        return begun(entry).one(Role.MOTHER, entry.mother()).list();
    }

    @Override
    public List<Mention> retagged(Retagged entry) {
        return about(entry);
    }

    @Override
    public List<Mention> redetermined(Redetermined entry) {
        return about(entry);
    }

    @Override
    public List<Mention> foundUntagged(FoundUntagged entry) {
        return begun(entry).all(Role.CANDIDATE, entry.candidates()).list();
    }

    @Override
    public List<Mention> checked(Checked entry) {
        return about(entry);
    }

    @Override
    public List<Mention> reworked(Reworked entry) {
        return about(entry);
    }

    @Override
    public List<Mention> taken(Taken entry) {
        return about(entry);
    }

    @Override
    public List<Mention> severed(Severed entry) {
        return about(entry);
    }

    @Override
    public List<Mention> drawn(Drawn entry) {
        return begun(entry).one(Role.SOURCE, entry.source()).list();
    }

    @Override
    public List<Mention> failed(Failed entry) {
        return about(entry);
    }

    @Override
    public List<Mention> potted(Potted entry) {
        return about(entry);
    }

    @Override
    public List<Mention> plantedOut(PlantedOut entry) {
        return about(entry);
    }

    @Override
    public List<Mention> lifted(Lifted entry) {
        return about(entry);
    }

    @Override
    public List<Mention> moved(Moved entry) {
        return about(entry);
    }

    @Override
    public List<Mention> measured(Measured entry) {
        return about(entry);
    }

    @Override
    public List<Mention> seen(Seen entry) {
        return about(entry);
    }

    @Override
    public List<Mention> keptAsStock(KeptAsStock entry) {
        return about(entry);
    }

    @Override
    public List<Mention> leftLong(LeftLong entry) {
        return about(entry);
    }

    @Override
    public List<Mention> cutBack(CutBack entry) {
        return about(entry);
    }

    @Override
    public List<Mention> held(Held entry) {
        return about(entry);
    }

    @Override
    public List<Mention> cleared(Cleared entry) {
        return about(entry);
    }

    @Override
    public List<Mention> graded(Graded entry) {
        return about(entry);
    }

    @Override
    public List<Mention> counted(Counted entry) {
        return about(entry);
    }

    @Override
    public List<Mention> split(Split entry) {
        return begun(entry).one(Role.SOURCE, entry.source()).list();
    }

    @Override
    public List<Mention> reserved(Reserved entry) {
        return about(entry);
    }

    @Override
    public List<Mention> released(Released entry) {
        return about(entry);
    }

    @Override
    public List<Mention> noted(Noted entry) {
        return about(entry);
    }

    @Override
    public List<Mention> merged(Merged entry) {
        return begun(entry).all(Role.MERGED, entry.sources()).list();
    }

    @Override
    public List<Mention> closed(Closed entry) {
        return about(entry);
    }

    @Override
    public List<Mention> sold(Sold entry) {
        return about(entry);
    }

    @Override
    public List<Mention> returned(Returned entry) {
        return about(entry);
    }

    @Override
    public List<Mention> culled(Culled entry) {
        return about(entry);
    }

    @Override
    public List<Mention> lost(Lost entry) {
        return about(entry);
    }

    @Override
    public List<Mention> corrected(Corrected entry) {
        return List.of();
    }

    @Override
    public List<Mention> crossedOut(CrossedOut entry) {
        return List.of();
    }
}
