// stays-of-units: the places that some units stood in by a day
// in: units, as_of
// out: unit, place, day, recorded_order
// sort: unit, then the order of its timeline
// units is a text of numbers with commas between them
UNWIND split($units, ',') AS number
MATCH (u:Unit {unit: toInteger(number)})-[s:STOOD_AT]->(p:Place)
WHERE s.day_first <= $as_of
WITH u, s, p ORDER BY u.unit, s.position
RETURN u.unit AS unit, p.place AS place, s.day AS day, s.recorded_order AS recorded_order
