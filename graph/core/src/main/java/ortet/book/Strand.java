package ortet.book;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import ortet.entry.Corrected;
import ortet.entry.CrossedOut;
import ortet.entry.Entry;
import ortet.entry.Form;
import ortet.entry.Proposed;
import ortet.entry.Recorded;
import ortet.plant.PersonNumber;
import ortet.plant.Tag;
import ortet.plant.Tags;
import ortet.value.Fault;
import ortet.value.Nearest;
import ortet.value.Refused;
import ortet.value.When;

/**
 * What a recorded entry says once its amendments are applied, for those of its units that share the same words.
 *
 * <p>An entry that nobody amended has one strand; one that is crossed out has none; a correction for one tag of many
 * splits a strand in two.
 *
 * @param recorded the entry as first written
 * @param day when it was done
 * @param by who did it
 * @param entry its words, with the tags that share them
 * @param positions for each of these tags its place among the tags as first written; empty stands for all, in order
 * @param tagsOrder the recorded order of what gave these tags: the entry itself, or the correction of its tags or its
 *     new tag
 */
record Strand(
        Recorded recorded, When day, Optional<PersonNumber> by, Entry entry, List<Integer> positions, long tagsOrder) {

    private static final String DAY = "day";
    private static final String BY = "by";
    private static final String TAGS = "tags";
    private static final String NEW_TAG = "new_tag";

    Strand {
        positions = List.copyOf(positions);
    }

    /** Return the place among the tags as first written of the tag that stands at the given place now. */
    int position(int at) {
        return positions.isEmpty() ? at : positions.get(at);
    }

    /** Return the strand of an entry that nobody amended. */
    static Strand asWritten(Recorded recorded) {
        Proposed written = recorded.proposed();
        return new Strand(recorded, written.day(), written.by(), written.entry(), List.of(), recorded.order());
    }

    /**
     * Return what an entry says after its amendments, in order.
     *
     * @throws Refused when an amendment cannot be applied
     */
    static List<Strand> of(Recorded recorded, List<Recorded> amendments) {
        List<Strand> strands = List.of(asWritten(recorded));
        for (Recorded amendment : amendments) {
            if (amendment.entry() instanceof CrossedOut) {
                return List.of();
            }
            strands = corrected(strands, (Corrected) amendment.entry(), amendment.order());
        }
        return strands;
    }

    /** Return what an entry said before it was crossed out, or says now where it was not. */
    static List<Strand> beforeCrossingOut(Recorded recorded, List<Recorded> amendments) {
        return of(
                recorded,
                amendments.stream()
                        .filter(amendment -> !(amendment.entry() instanceof CrossedOut))
                        .toList());
    }

    private static List<Strand> corrected(List<Strand> strands, Corrected correction, long order) {
        List<Strand> result = new ArrayList<>();
        Set<Tag> wanted = new HashSet<>(correction.tags());
        List<Tag> replacements = replacements(strands, correction);
        for (Strand strand : strands) {
            List<Tag> tags = strand.entry().tags();
            List<Integer> hit = new ArrayList<>();
            List<Integer> rest = new ArrayList<>();
            for (int at = 0; at < tags.size(); at++) {
                (correction.tags().isEmpty() || wanted.remove(tags.get(at)) ? hit : rest).add(at);
            }
            boolean tagless = tags.isEmpty();
            if (!tagless && hit.isEmpty()) {
                result.add(strand);
                continue;
            }
            if (!rest.isEmpty()) {
                result.add(strand.only(rest));
            }
            Strand changed = rest.isEmpty() ? strand : strand.only(hit);
            if (correction.field().equals(TAGS)) {
                if (correction.value().isPresent()) {
                    List<Tag> named = correction.tags().isEmpty() ? allTags(strands) : correction.tags();
                    List<Tag> fresh = hit.stream()
                            .map(at -> replacements.get(named.indexOf(tags.get(at))))
                            .toList();
                    result.add(changed.withField(TAGS, join(fresh)).tied(order));
                }
            } else {
                Strand corrected = changed.with(correction);
                result.add(correction.field().equals(NEW_TAG) ? corrected.tied(order) : corrected);
            }
        }
        if (!wanted.isEmpty()) {
            List<String> named = allTags(strands).stream().map(Tag::text).toList();
            Tag stray = correction.tags().stream()
                    .filter(wanted::contains)
                    .findFirst()
                    .orElseThrow();
            throw new Refused(Fault.of("bad-correction", "the entry does not name " + stray)
                    .nearest(Nearest.of(stray.text(), named)));
        }
        return result;
    }

    private static List<Tag> allTags(List<Strand> strands) {
        return strands.stream()
                .flatMap(strand -> strand.entry().tags().stream())
                .toList();
    }

    private static List<Tag> replacements(List<Strand> strands, Corrected correction) {
        if (!correction.field().equals(TAGS)) {
            return List.of();
        }
        int named = correction.tags().isEmpty()
                ? allTags(strands).size()
                : correction.tags().size();
        if (correction.value().isEmpty()) {
            if (correction.tags().isEmpty()) {
                throw Refused.because("bad-correction", "tags: to take all of them out, cross the entry out");
            }
            return List.of();
        }
        List<Tag> fresh = Tags.parse(correction.value().get());
        if (fresh.size() != named) {
            throw Refused.because(
                    "bad-correction",
                    "tags: expected " + named + (named == 1 ? " tag" : " tags") + " in place of as many, found "
                            + fresh.size());
        }
        return fresh;
    }

    private Strand only(List<Integer> places) {
        List<Tag> tags = entry.tags();
        List<Integer> kept = places.stream().map(this::position).toList();
        Entry fewer =
                reread(TAGS, Optional.of(join(places.stream().map(tags::get).toList())));
        return new Strand(recorded, day, by, fewer, kept, tagsOrder);
    }

    private Strand tied(long order) {
        return new Strand(recorded, day, by, entry, allPositions(), order);
    }

    private List<Integer> allPositions() {
        return positions.isEmpty()
                ? IntStream.range(0, entry.tags().size()).boxed().toList()
                : positions;
    }

    private Strand with(Corrected correction) {
        return switch (correction.field()) {
            case DAY ->
                new Strand(
                        recorded,
                        When.parse(correction
                                .value()
                                .orElseThrow(() -> Refused.because("bad-correction", "day: must not be empty"))),
                        by,
                        entry,
                        positions,
                        tagsOrder);
            case BY ->
                new Strand(recorded, day, correction.value().map(PersonNumber::parse), entry, positions, tagsOrder);
            default -> withField(correction.field(), correction.value().orElse(""));
        };
    }

    private Strand withField(String field, String value) {
        return new Strand(
                recorded,
                day,
                by,
                reread(field, Optional.of(value)),
                field.equals(TAGS) ? allPositions() : positions,
                tagsOrder);
    }

    private Entry reread(String field, Optional<String> value) {
        Form form = Form.of(entry.kind());
        if (form.field(field).isEmpty()) {
            List<String> known = new ArrayList<>(List.of(DAY, BY));
            form.fields().forEach(column -> known.add(column.name()));
            throw new Refused(Fault.of(
                            "bad-correction",
                            entry.kind().word() + " has no field \"" + field + "\"; it has " + String.join(", ", known))
                    .nearest(Nearest.of(field, known)));
        }
        Map<String, String> texts = new LinkedHashMap<>(Form.write(entry));
        texts.put(field, value.orElse(""));
        return form.read(texts);
    }

    private static String join(List<Tag> tags) {
        return String.join(" ", tags.stream().map(Tag::text).toList());
    }
}
