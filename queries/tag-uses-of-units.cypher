// tag-uses-of-units: the tags that some units bore by a day, and those with which they began
// in: units, as_of
// out: unit, tag, day, recorded_order
// sort: unit, then the order of its timeline
// units is a text of numbers with commas between them
UNWIND split($units, ',') AS number
MATCH (u:Unit {unit: toInteger(number)})-[:BEARS]->(t:Tag)
WHERE t.day_first <= $as_of OR t.position = 0
WITH u, t ORDER BY u.unit, t.position
RETURN u.unit AS unit, t.tag AS tag, t.day AS day, t.recorded_order AS recorded_order
