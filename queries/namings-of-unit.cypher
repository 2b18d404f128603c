// namings-of-unit: the cultivars that a unit was said or found to be
// in: unit
// out: cultivar, is_true, day, recorded_order
// sort: the order of the unit's timeline
MATCH (:Unit {unit: $unit})-[n:NAMED]->(c:Cultivar)
RETURN c.cultivar AS cultivar, n.is_true AS is_true, n.day AS day, n.recorded_order AS recorded_order
ORDER BY n.position
