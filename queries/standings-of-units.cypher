// standings-of-units: how many of some units there were under their tags after each change by a day
// in: units, as_of
// out: unit, pending, growing, day, recorded_order
// sort: unit, then the order of its timeline
// units is a text of numbers with commas between them
UNWIND split($units, ',') AS number
MATCH (u:Unit {unit: toInteger(number)})-[:STOOD]->(x:Standing)
WHERE x.day_first <= $as_of
WITH u, x ORDER BY u.unit, x.position
RETURN u.unit AS unit, x.pending AS pending, x.growing AS growing, x.day AS day, x.recorded_order AS recorded_order
