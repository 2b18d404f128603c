// unit-by-tag: the unit that bears or bore a tag
// in: tag
// out: unit
// sort: one row at most
MATCH (t:Tag {tag: $tag})
RETURN t.unit AS unit
LIMIT 1
