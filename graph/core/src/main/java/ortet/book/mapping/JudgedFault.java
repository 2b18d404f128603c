package ortet.book.mapping;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import ortet.entry.EntryKind;
import ortet.value.Fault;

/** Finds the column of a row that an objection of the judge is about. */
final class JudgedFault {
    private static final Pattern WORD = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{M}\\p{N}\\-_./#]*");

    private JudgedFault() {}

    /**
     * Return a fault at the column that it is about.
     *
     * @param told the entries of its row
     */
    static Fault placed(Fault fault, List<Told> told) {
        SheetRow row = told.get(0).row();
        if (fault.rule().equals("tag-in-use")) {
            boolean isRetagged = told.get(0).kind() == EntryKind.RETAGGED;
            return fault.at(row.where("", isRetagged ? "new_tag" : Meaning.TAGS));
        }
        List<String> words = new ArrayList<>();
        Matcher matcher = WORD.matcher(fault.text());
        while (matcher.find()) {
            words.add(matcher.group());
        }
        List<Told> meant =
                told.stream().filter(one -> fault.text().contains(said(one))).toList();
        for (Told one : meant.isEmpty() ? told : meant) {
            Deed deed = one.deed();
            if (words.isEmpty()) {
                continue;
            }
            if (fault.rule().equals("too-many")
                    && row.file().column(deed.act(), Meaning.COUNT).isPresent()) {
                return fault.at(row.where(deed.act(), Meaning.COUNT));
            }
            String named = fault.rule().equals("unknown-tag") ? words.get(words.size() - 1) : words.get(0);
            for (String field : deed.texts().fields()) {
                boolean isParent = Nursery.isOfOthers(field)
                        && List.of(deed.texts().get(field).split("[ :]")).contains(named);
                if (isParent) {
                    return fault.at(row.where(deed.act(), field));
                }
            }
        }
        return fault;
    }

    private static String said(Told told) {
        return " be " + told.kind().word().replace('-', ' ') + " ";
    }
}
