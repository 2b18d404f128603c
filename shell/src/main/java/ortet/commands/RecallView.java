package ortet.commands;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import ortet.book.UnitFacts.Nature;
import ortet.entry.Words;
import ortet.lineage.Doubt;
import ortet.lineage.Finding;
import ortet.lineage.Recall;
import ortet.lineage.RecallQuestion;
import ortet.lineage.Route;
import ortet.lineage.Sale;
import ortet.lineage.Tie;
import ortet.plant.CultivarName;
import ortet.plant.Tag;
import ortet.plant.Tags;
import ortet.screen.Column;
import ortet.screen.Json;
import ortet.screen.OutputFormat;
import ortet.screen.Screen;
import ortet.screen.Sheet;
import ortet.screen.Style;

/** Shows what a disease may have reached: what to do first, then why; as rows and as JSON for the authority. */
final class RecallView {
    /** How many reasons people are shown for each list; the files have all. */
    private static final int MOST_REASONS = 40;

    private static final String CAUTION_FIRST = "Tell the plant health authority";

    private static final String CAUTION_THEN =
            ": this list does not replace it. Move and sell none of these plants, and clean hands and tools between them,"
                    + " until it has said what to do.";

    private static final String CAUTION = CAUTION_FIRST + CAUTION_THEN;

    /** Comes after every name. */
    private static final String NOBODY = "\uffff";

    private RecallView() {}

    static void show(Recall recall, OutputFormat format, Screen screen) {
        switch (format) {
            case TABLE -> words(recall, screen);
            case CSV -> screen.show(rows(recall), format);
            case JSON -> screen.json(json -> json(recall, json));
        }
    }

    /** Return what was asked, in words: {@code K-12 K-13, consignment 2024-17}. */
    static String asked(RecallQuestion question) {
        List<String> parts = new ArrayList<>();
        if (!question.tags().isEmpty()) {
            parts.add(Tags.brief(question.tags()));
        }
        if (question.consignment().isPresent() || question.supplier().isPresent()) {
            parts.add(question.consignment().map(text -> "consignment " + text).orElse("what came")
                    + question.supplier().map(name -> " from " + name).orElse(""));
        }
        question.place().ifPresent(place -> parts.add("what stood in " + place));
        return String.join(", ", parts)
                + question.from().map(day -> " from " + day).orElse("")
                + question.to().map(day -> " to " + day).orElse("");
    }

    private static String way(RecallQuestion question) {
        List<String> parts = new ArrayList<>();
        parts.add(
                question.sources()
                        ? "up to every source and down to all raised from them"
                        : "down alone, not to sources");
        if (question.clonal()) {
            parts.add("within the clone alone");
        }
        if (!question.routes().equals(Route.ALL)) {
            parts.add("by " + question.routes().stream().sorted().map(Words::of).collect(Collectors.joining(", "))
                    + " alone");
        }
        if (question.rounds() > 0) {
            parts.add(Counts.of(question.rounds(), "round", "rounds") + " of contacts by place");
        }
        if (question.tools()) {
            parts.add("and by the same hands");
        }
        question.since().ifPresent(day -> parts.add("nothing before " + day));
        return String.join(", ", parts);
    }

    // ---- for people ----

    private static void words(Recall recall, Screen screen) {
        screen.headed(
                "",
                "Recall of " + asked(recall.question()),
                "  ",
                ", as of " + recall.question().asOf());
        screen.hanging("", "  ", way(recall.question()));
        screen.println();
        screen.hanging("  ", "    ", counts("implicated", recall.implicated()));
        screen.hanging("  ", "    ", counts("cannot be ruled out", recall.notRuledOut()));
        screen.println();
        screen.headed("", CAUTION_FIRST, "  ", CAUTION_THEN);
        pull(recall, screen);
        call(recall, screen);
        reasons("Implicated, and why", recall.implicated(), screen);
        reasons("Cannot be ruled out, and why", recall.notRuledOut(), screen);
        limits(recall, screen);
        screen.println();
        screen.hanging(
                "",
                "  ",
                "book up to entry #" + recall.head().order() + ", digest "
                        + recall.head().digest());
    }

    private static String counts(String list, List<Finding> findings) {
        long here = findings.stream().filter(Finding::isHere).count();
        long plants = findings.stream().mapToLong(Finding::growing).sum();
        long pending =
                findings.stream().mapToLong(one -> one.pending().orElse(0)).sum();
        long sold = findings.stream()
                .flatMap(one -> one.sales().stream())
                .mapToLong(Sale::count)
                .sum();
        List<String> parts = new ArrayList<>();
        if (here > 0) {
            parts.add(Counts.of(here, "tag", "tags") + " still here"
                    + " (" + (plants > 0 || pending == 0 ? Counts.of(plants, "plant", "plants") + " growing" : "")
                    + (plants > 0 && pending > 0 ? ", " : "")
                    + (pending > 0 ? pending + " pending" : "") + ")");
        } else if (!findings.isEmpty()) {
            parts.add("nothing of it still here");
        }
        if (sold > 0) {
            parts.add(Counts.of(sold, "plant", "plants") + " sold");
        }
        return list + ": " + Counts.of(findings.size(), "tag", "tags")
                + (parts.isEmpty() ? "" : "; " + String.join("; ", parts));
    }

    private static void heading(String text, Screen screen) {
        screen.println();
        screen.println(screen.styled(Style.STRONG, text));
        screen.println();
    }

    private record Standing(String place, boolean sure) {}

    private static void pull(Recall recall, Screen screen) {
        Map<Standing, List<Finding>> byPlace = new LinkedHashMap<>();
        for (List<Finding> list : List.of(recall.implicated(), recall.notRuledOut())) {
            Map<String, List<Finding>> sorted = new TreeMap<>();
            list.stream()
                    .filter(Finding::isHere)
                    .forEach(one -> sorted.computeIfAbsent(
                                    one.place().map(Object::toString).orElse("place not known"),
                                    name -> new ArrayList<>())
                            .add(one));
            sorted.forEach((place, here) -> byPlace.put(new Standing(place, list == recall.implicated()), here));
        }
        if (byPlace.isEmpty()) {
            heading("To pull: nothing that is still here", screen);
            return;
        }
        heading("To pull: what is still here, by place", screen);
        Sheet.Builder sheet = Sheet.titled(
                "",
                Column.text("place", "place"),
                Column.whole("growing", "growing"),
                Column.whole("pending", "pending"),
                Column.whole("held", "held"),
                Column.text("tags", "tags"));
        boolean[] sections = new boolean[2];
        byPlace.forEach((where, here) -> {
            int section = where.sure() ? 0 : 1;
            if (!sections[section]) {
                sections[section] = true;
                sheet.section(where.sure() ? "implicated" : "cannot be ruled out");
            }
            sheet.row(
                    where.place(),
                    here.stream().mapToLong(Finding::growing).sum(),
                    here.stream().mapToLong(one -> one.pending().orElse(0)).sum(),
                    here.stream().filter(Finding::held).count(),
                    Tags.brief(here.stream().map(Finding::tag).toList()));
        });
        screen.show(sheet.build(), OutputFormat.TABLE);
    }

    private record Buyer(String name, String day, boolean sure) {}

    private static void call(Recall recall, Screen screen) {
        Map<Buyer, List<Finding>> buyers = new LinkedHashMap<>();
        Map<Buyer, int[]> counts = new LinkedHashMap<>();
        for (boolean sure : new boolean[] {true, false}) {
            Map<String, Map<String, List<Finding>>> sorted = new TreeMap<>();
            recall.all()
                    .forEach(one -> one.sales().stream()
                            .filter(sale -> (sale.isSure() && one.isImplicated()) == sure)
                            .forEach(sale -> {
                                String name = sale.shown().orElse(NOBODY);
                                sorted.computeIfAbsent(name, key -> new TreeMap<>())
                                        .computeIfAbsent(sale.day().toString(), key -> new ArrayList<>())
                                        .add(one);
                                int[] count = counts.computeIfAbsent(
                                        new Buyer(name, sale.day().toString(), sure), key -> new int[2]);
                                count[0] += sale.count();
                                count[1] += sale.back();
                            }));
            sorted.forEach((name, days) -> days.forEach((day, all) -> buyers.put(new Buyer(name, day, sure), all)));
        }
        if (buyers.isEmpty()) {
            heading("To call: nobody, nothing of it was sold", screen);
            return;
        }
        boolean back = counts.values().stream().anyMatch(count -> count[1] > 0);
        heading("To call: who bought, and when", screen);
        Sheet.Builder sheet = Sheet.titled(
                "",
                Column.text("customer", "customer"),
                Column.text("day", "day"),
                Column.whole("plants", "plants"),
                back
                        ? Column.whole("back", "came back")
                        : Column.whole("back", "came back").forPrograms(),
                Column.text("tags", "tags"));
        boolean[] sections = new boolean[2];
        buyers.forEach((buyer, all) -> {
            int section = buyer.sure() ? 0 : 1;
            if (!sections[section]) {
                sections[section] = true;
                sheet.section(buyer.sure() ? "implicated" : "cannot be ruled out");
            }
            sheet.row(
                    buyer.name().equals(NOBODY) ? "nobody wrote down to whom" : buyer.name(),
                    buyer.day(),
                    counts.get(buyer)[0],
                    counts.get(buyer)[1],
                    Tags.brief(all.stream().map(Finding::tag).distinct().toList()));
        });
        screen.show(sheet.build(), OutputFormat.TABLE);
    }

    private static void reasons(String title, List<Finding> findings, Screen screen) {
        if (findings.isEmpty()) {
            return;
        }
        heading(title, screen);
        Map<String, List<Tag>> byReason = new LinkedHashMap<>();
        List<Finding> nearest = new ArrayList<>(findings);
        nearest.sort(Comparator.comparingInt(one -> one.path().size()));
        for (Finding one : nearest) {
            String doubts = one.doubts().stream().map(Doubt::words).collect(Collectors.joining("; "));
            byReason.computeIfAbsent(
                            one.because() + (doubts.isEmpty() ? "" : ": " + doubts), reason -> new ArrayList<>())
                    .add(one.tag());
        }
        int shown = 0;
        int left = 0;
        for (Map.Entry<String, List<Tag>> reason : byReason.entrySet()) {
            if (shown < MOST_REASONS) {
                String tags = Tags.brief(reason.getValue());
                String count =
                        reason.getValue().size() > 1 ? " (" + reason.getValue().size() + ")" : "";
                screen.headed(
                        "  ",
                        tags,
                        "      ",
                        count + " " + plural(reason.getKey(), reason.getValue().size()));
                shown++;
            } else {
                left += reason.getValue().size();
            }
        }
        if (left > 0) {
            screen.hanging(
                    "  ", "    ", "and " + Counts.of(left, "other", "others") + ": --format csv tells of each of them");
        }
    }

    private static String plural(String reason, int count) {
        return count > 1 ? reason.replaceFirst("^was ", "were ").replaceFirst("^is a sport", "are sports") : reason;
    }

    /** Say what the book cannot tell. */
    private static void limits(Recall recall, Screen screen) {
        List<String> limits = limits(recall);
        if (!limits.isEmpty()) {
            heading("What the book cannot say", screen);
            limits.forEach(limit -> screen.hanging("  - ", "    ", limit));
        }
    }

    private static List<String> limits(Recall recall) {
        List<String> limits = new ArrayList<>();
        RecallQuestion question = recall.question();
        if (question.steps() == 0) {
            limits.add("What stood beside these plants was not asked for: add --contacts 1.");
        }
        long anonymous = recall.all()
                .flatMap(one -> one.sales().stream())
                .filter(sale -> sale.customer().isEmpty())
                .mapToLong(Sale::count)
                .sum();
        if (anonymous > 0) {
            limits.add("To whom " + Counts.of(anonymous, "plant was", "plants were")
                    + " sold: nobody wrote it down, so nobody can be called.");
        }
        if (!recall.unplaced().isEmpty()) {
            limits.add("Where "
                    + Tags.brief(
                            recall.unplaced().stream().map(Recall.Unplaced::tag).toList())
                    + " stood for a time: "
                    + (question.everywhere()
                            ? "all that was there then is under \"cannot be ruled out\"."
                            : "all that was there then may have stood beside; --unknown-places lists it."));
        }
        long uncounted = recall.all()
                .filter(Finding::isHere)
                .filter(one -> one.pending().isEmpty())
                .count();
        if (uncounted > 0) {
            limits.add("How many seedlings there are in " + Counts.of(uncounted, "sowing", "sowings")
                    + " by weight: nobody has counted them.");
        }
        if (question.tools()) {
            limits.add("Which knife was used: the book holds who did it and on which day, nothing of tools."
                    + (recall.nobodys() > 0
                            ? " "
                                    + Counts.of(
                                            recall.nobodys(),
                                            "entry on these plants does",
                                            "entries on these plants do")
                                    + " not say who did it."
                            : ""));
        }
        if (!recall.older().isEmpty()) {
            limits.add(Counts.of(recall.older().size(), "tag is", "tags are")
                    + " left alone because what ties them is older than "
                    + question.since().map(LocalDate::toString).orElse("the suspects") + ": "
                    + Tags.brief(recall.older()) + ".");
        }
        return limits;
    }

    // ---- for programs ----

    private static Sheet rows(Recall recall) {
        Sheet.Builder sheet = Sheet.titled(
                "recall of " + asked(recall.question()) + ", as of "
                        + recall.question().asOf(),
                Column.text("list", "list"),
                Column.text("tag", "tag"),
                Column.text("kind", "kind"),
                Column.text("cultivar", "cultivar"),
                Column.text("where", "where"),
                Column.whole("growing", "growing"),
                Column.whole("pending", "pending"),
                Column.text("place", "place"),
                Column.truth("held", "held"),
                Column.text("customer", "customer"),
                Column.text("day", "day"),
                Column.whole("sold", "sold"),
                Column.whole("came_back", "came back"),
                Column.text("what_became", "what became of it"),
                Column.whole("contacts", "contacts"),
                Column.day("since", "since"),
                Column.text("because", "because"),
                Column.text("doubts", "doubts"),
                Column.day("as_of", "as of"),
                Column.whole("book_entries", "entries"),
                Column.text("book_digest", "digest"));
        recall.all().forEach(one -> {
            if (one.isHere()) {
                row(sheet, recall, one, "here", Optional.empty());
            }
            one.sales().forEach(sale -> row(sheet, recall, one, "sold", Optional.of(sale)));
            boolean told = one.isHere()
                    || !one.sales().isEmpty()
                            && one.gone()
                                    .filter(words -> words.startsWith("sold"))
                                    .isPresent();
            if (!told) {
                row(sheet, recall, one, "gone", Optional.empty());
            }
        });
        limits(recall).forEach(sheet::note);
        return sheet.warning(CAUTION).build();
    }

    private static void row(Sheet.Builder sheet, Recall recall, Finding one, String where, Optional<Sale> sale) {
        boolean here = where.equals("here");
        sheet.row(
                list(one.isImplicated() && sale.map(Sale::isSure).orElse(true)),
                one.tag().text(),
                kind(one.nature()),
                one.named().cultivar().map(CultivarName::toString),
                where,
                here ? Optional.of(one.growing()) : Optional.empty(),
                here ? one.pending() : Optional.empty(),
                here ? one.place().map(Object::toString) : Optional.empty(),
                here ? Optional.of(one.held()) : Optional.empty(),
                sale.flatMap(Sale::shown),
                sale.map(sold -> sold.day().toString()),
                sale.map(Sale::count),
                sale.map(Sale::back),
                where.equals("gone") ? one.gone() : Optional.empty(),
                one.round(),
                one.since(),
                one.tag() + " " + one.because(),
                one.doubts().stream().map(Doubt::words).collect(Collectors.joining("; ")),
                recall.question().asOf(),
                recall.head().order(),
                recall.head().digest().toString());
    }

    private static String list(boolean implicated) {
        return implicated ? "implicated" : "cannot-be-ruled-out";
    }

    private static String kind(Nature nature) {
        return Words.of(nature);
    }

    private static void json(Recall recall, Json json) {
        RecallQuestion question = recall.question();
        json.object(answer -> {
            answer.field("asked", asked(question))
                    .field("as_of", question.asOf())
                    .field("contacts", question.rounds())
                    .field("tools", question.tools())
                    .field("since", question.since())
                    .field("sources", question.sources())
                    .field("clonal_only", question.clonal())
                    .array(
                            "acts",
                            acts -> question.routes().stream().sorted().forEach(route -> acts.value(Words.of(route))))
                    .object(
                            "book",
                            book -> book.field("id", recall.head().bookId().toString())
                                    .field("entries", recall.head().order())
                                    .field("digest", recall.head().digest().toString()))
                    .field("began_with", recall.began())
                    .array("implicated", list -> recall.implicated().forEach(one -> json(one, list)))
                    .array("cannot_be_ruled_out", list -> recall.notRuledOut().forEach(one -> json(one, list)))
                    .array(
                            "place_not_known",
                            list -> recall.unplaced()
                                    .forEach(one -> list.object(
                                            gap -> gap.field("tag", one.tag().text())
                                                    .field("from", one.from())
                                                    .field("to", one.to()))))
                    .array("older", list -> recall.older().forEach(tag -> list.value(tag.text())))
                    .array("limits", list -> limits(recall).forEach(list::value))
                    .field("caution", CAUTION);
        });
    }

    private static void json(Finding one, Json list) {
        list.object(json -> json.field("tag", one.tag().text())
                .field("unit", one.unit().value())
                .field("nature", Words.of(one.nature()))
                .field("cultivar", one.named().cultivar().map(CultivarName::toString))
                .field("here", one.isHere())
                .field("pending", one.pending())
                .field("growing", one.growing())
                .field("on_mother", one.onMother())
                .field("place", one.place().map(Object::toString))
                .field("held", one.held())
                .field("what_became", one.gone())
                .field("contacts", one.round())
                .field("since", one.since())
                .field("because", one.tag() + " " + one.because())
                .array("doubts", doubts -> one.doubts().forEach(doubt -> doubts.value(Words.of(doubt))))
                .array("path", path -> one.path().forEach(tie -> json(tie, path)))
                .array(
                        "sales",
                        sales -> one.sales()
                                .forEach(sale -> sales.object(sold -> sold.field("customer", sale.shown())
                                        .field(
                                                "customer_number",
                                                sale.customer().map(Object::toString))
                                        .field("day", sale.day().toString())
                                        .field("count", sale.count())
                                        .field("came_back", sale.back())
                                        .field("sure", sale.isSure())))));
    }

    private static void json(Tie tie, Json path) {
        path.object(json -> json.field("tie", Words.of(tie.kind()))
                .field("tag", tie.tag().text())
                .field("act", tie.act().map(act -> Words.of(act)))
                .field("what", tie.what())
                .field("day", tie.day())
                .field("until", tie.until())
                .field("doubt", tie.doubt().map(doubt -> Words.of(doubt))));
    }
}
