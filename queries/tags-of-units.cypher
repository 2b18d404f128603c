// tags-of-units: the tag that each of some units bore on a day, or its first where it had none yet
// in: units, as_of
// out: unit, tag
// sort: unit
UNWIND split($units, ',') AS number
MATCH (u:Unit {unit: toInteger(number)})
RETURN u.unit AS unit,
       coalesce(
         head(COLLECT { MATCH (u)-[:BEARS]->(t:Tag) WHERE t.day_first <= $as_of
                        RETURN t.tag ORDER BY t.position DESC LIMIT 1 }),
         head(COLLECT { MATCH (u)-[:BEARS]->(t:Tag)
                        RETURN t.tag ORDER BY t.position LIMIT 1 })) AS tag
ORDER BY unit
