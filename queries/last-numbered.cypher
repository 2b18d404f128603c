// last-numbered: of the tags that are a beginning and a number, when case does not matter, the one with the highest
// in: folded
// out: tag
// sort: one row at most
MATCH (t:Tag)
WHERE t.folded >= $folded + '0' AND t.folded < $folded + ':'   // the character after 9
  AND substring(t.folded, size($folded)) =~ '[0-9]*'
RETURN t.tag AS tag
ORDER BY size(t.folded) DESC, t.folded DESC
LIMIT 1
