// tags-of-units: the tag that each of some units bore on a day, or its first where it had none yet
// in: units, as_of
// out: unit, tag
// sort: unit
UNWIND split($units, ',') AS number
MATCH (u:Unit {unit: toInteger(number)})-[:BEARS]->(t:Tag)
WITH u.unit AS unit, t.tag AS tag, t.position AS position, t.day_first <= $as_of AS is_borne
ORDER BY is_borne, CASE WHEN is_borne THEN position ELSE -position END
RETURN unit, last(collect(tag)) AS tag
ORDER BY unit
