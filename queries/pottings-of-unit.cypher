// pottings-of-unit: the containers of a unit; none where it was planted in open ground
// in: unit
// out: container, day, recorded_order
// sort: the order of the unit's timeline
MATCH (:Unit {unit: $unit})-[:POTTED]->(x:Potting)
RETURN x.container AS container, x.day AS day, x.recorded_order AS recorded_order
ORDER BY x.position
