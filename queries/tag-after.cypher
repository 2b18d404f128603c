// tag-after: the first tag after a text, in the order of code points, when case does not matter
// in: folded
// out: folded, tag
// sort: one row at most
MATCH (t:Tag)
WHERE t.folded > $folded
RETURN t.folded AS folded, t.tag AS tag
ORDER BY folded
LIMIT 1
