// namings-of-units: the cultivars that some units were said or found to be by a day
// in: units, as_of
// out: unit, cultivar, is_true, day, recorded_order
// sort: unit, then the order of its timeline
// units is a text of numbers with commas between them
UNWIND split($units, ',') AS number
MATCH (u:Unit {unit: toInteger(number)})-[n:NAMED]->(k:Cultivar)
WHERE n.day_first <= $as_of
WITH u, n, k ORDER BY u.unit, n.position
RETURN u.unit AS unit, k.cultivar AS cultivar, n.is_true AS is_true, n.day AS day, n.recorded_order AS recorded_order
