// tags-from: tags in the order of code points when case does not matter, from a text on, up to a number
// in: folded, most
// out: tag
// sort: folded
MATCH (t:Tag)
WHERE t.folded >= $folded
WITH t.folded AS folded, max(t.tag) AS tag
ORDER BY folded
LIMIT $most
RETURN tag
