// stays-of-unit: the places that a unit stood in
// in: unit
// out: place, day, recorded_order
// sort: the order of the unit's timeline
MATCH (:Unit {unit: $unit})-[s:STOOD_AT]->(p:Place)
RETURN p.place AS place, s.day AS day, s.recorded_order AS recorded_order
ORDER BY s.position
