// leavings-of-unit: units that left a tag for good, and why
// in: unit
// out: reason, count, person, day, recorded_order
// sort: the order of the unit's timeline
MATCH (:Unit {unit: $unit})-[:LEFT]->(x:Leaving)
RETURN x.reason AS reason, x.count AS count, x.person AS person, x.day AS day, x.recorded_order AS recorded_order
ORDER BY x.position
