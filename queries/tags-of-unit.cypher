// tags-of-unit: every tag that a unit bears or bore, the present one last
// in: unit
// out: tag, day, recorded_order
// sort: the order in which they were tied on
MATCH (:Unit {unit: $unit})-[:BEARS]->(x:Tag)
RETURN x.tag AS tag, x.day AS day, x.recorded_order AS recorded_order
ORDER BY x.position
