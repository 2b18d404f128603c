// leavings-of-units: how many of some units left their tags by a day, and why
// in: units, as_of
// out: unit, reason, count, person, day, recorded_order
// sort: unit, then the order of its timeline
// units is a text of numbers with commas between them
UNWIND split($units, ',') AS number
MATCH (u:Unit {unit: toInteger(number)})-[:LEFT]->(x:Leaving)
WHERE x.day_first <= $as_of
WITH u, x ORDER BY u.unit, x.position
RETURN u.unit AS unit, x.reason AS reason, x.count AS count, x.person AS person,
       x.day AS day, x.recorded_order AS recorded_order
