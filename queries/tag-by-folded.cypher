// tag-by-folded: the tag that is this text when case does not matter
// in: folded
// out: tag, unit
// sort: one row at most
MATCH (t:Tag {folded: $folded})
RETURN t.tag AS tag, t.unit AS unit
LIMIT 1
