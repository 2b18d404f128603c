// places-of-units: where some units stood on a day; those of which nobody said are left out
// in: units, as_of
// out: unit, place
// sort: unit
UNWIND split($units, ',') AS number
MATCH (u:Unit {unit: toInteger(number)})
WITH u, head(COLLECT { MATCH (u)-[s:STOOD_AT]->(p:Place) WHERE s.day_first <= $as_of
                       RETURN p.place ORDER BY s.position DESC LIMIT 1 }) AS place
WHERE place IS NOT NULL
RETURN u.unit AS unit, place
ORDER BY unit
