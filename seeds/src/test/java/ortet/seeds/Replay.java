package ortet.seeds;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import ortet.entry.Entry;
import ortet.entry.EntryKind;
import ortet.entry.Mention;
import ortet.entry.Mention.Role;
import ortet.plant.Tag;
import ortet.seeds.Rows.Row;

/**
 * A second reckoning of a day book, from its text alone: what begins, what is left, what is held, what is still on a
 * mother. It knows nothing of the generator and nothing of the book's own judge, and is kept much simpler than the
 * judge: it reads rows in the order of the file and amendments only as far as these day books have any.
 */
final class Replay {
    /** What stands under a tag. */
    static final class Stand {
        final EntryKind begunBy;
        final LocalDate begun;
        final boolean batch;
        int pending;
        int growing;
        boolean unknownCount;
        boolean held;
        boolean ended;
        int pottings;
        int moves;
        Optional<String> stock = Optional.empty();
        final List<String> from = new ArrayList<>();

        Stand(EntryKind begunBy, LocalDate begun, boolean batch) {
            this.begunBy = begunBy;
            this.begun = begun;
            this.batch = batch;
        }

        boolean isGone() {
            return pending + growing == 0 && !unknownCount && begunBy != EntryKind.SPORT_FOUND;
        }
    }

    private final Map<String, Stand> stands = new LinkedHashMap<>();
    private final Map<String, String> newTags = new HashMap<>();
    private final List<String> faults = new ArrayList<>();
    private final Map<Integer, Map<String, String>> mothersPutRight = new HashMap<>();
    private Row row;

    Replay(List<Row> rows) {
        Set<Integer> crossedOut = new HashSet<>();
        for (Row amendment : rows) {
            if (amendment.kind() == EntryKind.CROSSED_OUT) {
                crossedOut.add(Rows.target(amendment).orElseThrow());
            }
            if (amendment.kind() == EntryKind.CORRECTED
                    && amendment.text("field").equals("mother")) {
                mothersPutRight
                        .computeIfAbsent(Rows.target(amendment).orElseThrow(), line -> new HashMap<>())
                        .put(amendment.text("tags"), amendment.text("value"));
            }
        }
        for (Row each : rows) {
            row = each;
            if (!crossedOut.contains(each.line())) {
                take(each.entry());
            }
        }
    }

    Map<String, Stand> stands() {
        return stands;
    }

    List<String> faults() {
        return faults;
    }

    /** Return where a tag's unit stands, under whatever tag it was begun. */
    Stand stand(String tag) {
        String first = tag;
        while (newTags.containsKey(first)) {
            first = newTags.get(first);
        }
        return stands.get(first);
    }

    private void fault(String what) {
        faults.add("line " + row.line() + ", " + row.kind().word() + ": " + what);
    }

    private int count(int otherwise) {
        return row.text("count").isEmpty() ? otherwise : Integer.parseInt(row.text("count"));
    }

    private void take(Entry entry) {
        for (Mention mention : entry.mentions()) {
            if (mention.role() != Role.BEGUN) {
                source(mention);
            }
        }
        for (Mention mention : entry.mentions()) {
            if (mention.role() == Role.BEGUN) {
                begin(mention.tag(), entry);
            } else if (mention.role() == Role.SUBJECT) {
                happen(mention.tag(), stand(mention.tag().text()));
            }
        }
    }

    private void source(Mention mention) {
        Stand stand = stand(mention.tag().text());
        if (stand == null) {
            fault(mention.tag() + " is unknown");
            return;
        }
        if (row.day().last().isBefore(stand.begun)) {
            fault(mention.tag() + " had not begun");
        }
        boolean comesBack = row.kind() == EntryKind.RETURNED;
        if (stand.isGone() && !comesBack && mention.role() != Role.BESIDE) {
            fault("nothing is left of " + mention.tag());
        }
        boolean wood = Set.of(Role.MOTHER, Role.SCION, Role.STOCK, Role.SEED_PARENT, Role.POLLEN_PARENT)
                .contains(mention.role());
        if (wood && stand.growing == 0) {
            fault(mention.tag() + " is not growing");
        }
        boolean leaves = wood || row.kind() == EntryKind.SOLD || row.kind() == EntryKind.RESERVED;
        if (leaves && stand.held) {
            fault(mention.tag() + " is held");
        }
        int each = row.entry().tags().size();
        switch (mention.role()) {
            case STOCK -> takeOut(mention.tag(), stand, 0, each * count(1));
            case SOURCE -> {
                int out = each * count(1);
                int first = row.kind() == EntryKind.SPLIT ? stand.pending : stand.growing;
                int fromFirst = Math.min(first, out);
                if (row.kind() == EntryKind.SPLIT) {
                    takeOut(mention.tag(), stand, fromFirst, out - fromFirst);
                } else {
                    takeOut(mention.tag(), stand, out - fromFirst, fromFirst);
                }
            }
            default -> {}
        }
    }

    private void takeOut(Tag tag, Stand stand, int pending, int growing) {
        stand.pending -= pending;
        stand.growing -= growing;
        if (stand.pending < 0 || stand.growing < 0) {
            fault("more out of " + tag + " than there is");
        }
    }

    private void begin(Tag tag, Entry entry) {
        boolean counted = !row.text("count").isEmpty();
        boolean batch = switch (row.kind()) {
            case CUTTINGS_STRUCK, SEED_SOWN, SPLIT, MERGED -> true;
            case ACQUIRED, DRAWN, GRAFT_WORKED -> counted;
            default -> false;
        };
        Stand stand = new Stand(row.kind(), row.day().first(), batch);
        switch (row.kind()) {
            case LAYER_SET -> stand.pending = 1;
            case GRAFT_WORKED, CUTTINGS_STRUCK -> stand.pending = count(1);
            case SEED_SOWN -> {
                stand.pending = count(0);
                stand.unknownCount = !counted;
            }
            case SPLIT -> stand.pending = count(0);
            case MERGED -> {
                for (Mention mention : entry.mentions()) {
                    if (mention.role() == Role.MERGED) {
                        Stand source = stand(mention.tag().text());
                        stand.pending += source.pending;
                        stand.growing += source.growing;
                        source.pending = 0;
                        source.growing = 0;
                    }
                }
            }
            default -> stand.growing = count(1);
        }
        entry.mentions().stream()
                .filter(mention -> mention.role() != Role.BEGUN && mention.role() != Role.BESIDE)
                .forEach(mention -> stand.from.add(mention.tag().text()));
        Map<String, String> right = mothersPutRight.getOrDefault(row.line(), Map.of());
        if (right.containsKey(tag.text())) {
            stand.from.set(0, right.get(tag.text()));
        }
        if (row.kind() == EntryKind.GRAFT_WORKED && !row.text("stock").isEmpty()) {
            stand.stock = Optional.of(row.text("stock"));
        }
        if (stands.put(tag.text(), stand) != null || newTags.containsKey(tag.text())) {
            fault(tag + " is in use");
        }
    }

    private void happen(Tag tag, Stand stand) {
        if (stand == null) {
            return;
        }
        switch (row.kind()) {
            case CHECKED -> {
                if (!stand.batch && row.text("findings").equals("dead")) {
                    fail(tag, stand, 1);
                }
            }
            case TAKEN -> {
                int count = count(stand.pending);
                takeOut(tag, stand, count, 0);
                stand.growing += count;
                if (stand.begunBy == EntryKind.LAYER_SET) {
                    fault(tag + " is a layer: it is severed");
                }
            }
            case SEVERED -> {
                if (stand.begunBy != EntryKind.LAYER_SET || stand.pending != 1) {
                    fault(tag + " is no layer that is still on");
                }
                stand.pending = 0;
                stand.growing = row.text("roots").equals("none") ? 0 : 1;
                if (row.text("remainder").equals("used-up")) {
                    Stand mother = stand(stand.from.get(0));
                    mother.growing = 0;
                    noneOn(stand.from.get(0));
                }
            }
            case FAILED -> fail(tag, stand, count(stand.pending));
            case CLOSED -> {
                if (stand.pending == 0) {
                    fault("nothing of " + tag + " is open");
                }
                if (!row.text("rest").equals("still-on")) {
                    fail(tag, stand, stand.pending);
                }
            }
            case POTTED -> {
                stand.pottings++;
                if (stand.begunBy == EntryKind.LAYER_SET && stand.pending == 1
                        || stand.begunBy == EntryKind.SPORT_FOUND) {
                    fault(tag + " is still on its mother");
                }
                if (stand.batch) {
                    stand.growing += stand.pending;
                    stand.pending = 0;
                }
            }
            case PLANTED_OUT, LIFTED, GRADED, RESERVED -> grows(tag, stand);
            case MOVED -> stand.moves++;
            case HELD -> stand.held = true;
            case CLEARED -> stand.held = false;
            case COUNTED -> {
                int count = count(0);
                if (stand.unknownCount) {
                    stand.growing = count;
                    stand.unknownCount = false;
                } else {
                    stand.pending += count - stand.pending - stand.growing;
                }
            }
            case SOLD, LOST, CULLED -> {
                boolean surplus = row.text("cull").equals("surplus") && stand.pending > 0;
                if (surplus) {
                    takeOut(tag, stand, count(stand.pending), 0);
                } else {
                    grows(tag, stand);
                    takeOut(tag, stand, 0, count(stand.batch ? stand.growing : 1));
                }
                if (stand.isGone()) {
                    noneOn(tag.text());
                }
            }
            case RETURNED -> stand.growing += count(1);
            case RETAGGED -> newTags.put(row.text("new_tag"), tag.text());
            default -> {}
        }
    }

    private void grows(Tag tag, Stand stand) {
        if (stand.growing == 0) {
            fault(tag + " is not growing");
        }
    }

    private void noneOn(String mother) {
        stands.forEach((tag, stand) -> {
            boolean on = stand.begunBy == EntryKind.LAYER_SET && stand.pending == 1;
            if (on && stand(stand.from.get(0)) == stand(mother)) {
                fault(tag + " is still on " + mother);
            }
        });
    }

    private void fail(Tag tag, Stand stand, int count) {
        takeOut(tag, stand, count, 0);
        stand.stock.ifPresent(stock -> stand(stock).growing += count);
    }
}
