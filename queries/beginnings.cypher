// beginnings: the entries, as first written, that began some units, and whether any was amended since
// in: units
// out: unit, kind, raised, amended
// sort: unit
// raised: how what was acquired is said to have been raised
UNWIND split($units, ',') AS number
MATCH (u:Unit {unit: toInteger(number)})
WITH u.unit AS unit, u.recorded_order AS begun
MATCH (e:Entry {recorded_order: begun})
OPTIONAL MATCH (amendment:Entry)-[:AMENDS]->(e)
WITH unit, e.kind AS kind, e.raised AS raised, count(amendment) AS amendments
RETURN unit, kind, raised, CASE WHEN amendments > 0 THEN 1 ELSE 0 END AS amended
ORDER BY unit
