package ortet.entry;

import java.util.List;
import java.util.Optional;
import ortet.plant.Tag;
import ortet.value.Require;

/**
 * What was seen when a layer, tray, graft or sowing was looked at.
 *
 * @param tags the units that the entry is about, at least one
 * @param findings what was found, with how many where a batch was looked at
 * @param note anything else worth keeping
 */
public record Checked(List<Tag> tags, List<Finding> findings, Optional<String> note) implements Entry {
    public Checked {
        tags = List.copyOf(tags);
        Require.noRepeats(tags, "tags");
        Require.size(1, tags, "tags");
        findings = List.copyOf(findings);
        note = Require.text(note, "note");
        Require.size(1, findings, "findings");
    }

    @Override
    public EntryKind kind() {
        return EntryKind.CHECKED;
    }

    @Override
    public <R> R accept(Visitor<R> visitor) {
        return visitor.checked(this);
    }
}
