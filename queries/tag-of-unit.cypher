// tag-of-unit: the tag that a unit bore on a day, or its first where it had none yet
// in: unit, as_of
// out: tag
// sort: one row at most
MATCH (:Unit {unit: $unit})-[:BEARS]->(t:Tag)
RETURN t.tag AS tag
ORDER BY t.day_first <= $as_of DESC, CASE WHEN t.day_first <= $as_of THEN -t.position ELSE t.position END
LIMIT 1
