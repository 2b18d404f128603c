// standings-of-unit: how many units there were under a tag after each change
// in: unit
// out: pending, growing, day, recorded_order
// sort: the order of the unit's timeline
MATCH (:Unit {unit: $unit})-[:STOOD]->(x:Standing)
RETURN x.pending AS pending, x.growing AS growing, x.day AS day, x.recorded_order AS recorded_order
ORDER BY x.position
