// tags-like: the tags tied on by a day that are like a pattern of LIKE, when case does not matter
// in: pattern, as_of
// out: tag, unit
// sort: length of the tag, then folded
// A pattern of LIKE, with % and _, as a regular expression.
WITH '(?is)\\Q' + replace(replace(replace($pattern, '\\E', '\\E\\\\E\\Q'), '%', '\\E.*\\Q'), '_', '\\E.\\Q')
     + '\\E' AS like
MATCH (t:Tag)
WHERE t.day_first <= $as_of AND t.folded =~ like
WITH t.folded AS folded, min(t.tag) AS tag, min(t.unit) AS unit
RETURN tag, unit
ORDER BY size(tag), folded
