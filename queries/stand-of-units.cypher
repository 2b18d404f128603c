// stand-of-units: what some units are, and how they stood on a day
// in: units, as_of
// out: unit, tag, nature, pending, growing, standing_order, sold, reason, cultivar
// sort: unit
// pending is absent where nobody counted; reason is that of the last leaving; cultivar the unit's own name
UNWIND split($units, ',') AS number
MATCH (u:Unit {unit: toInteger(number)})
WITH u,
     head(COLLECT { MATCH (u)-[:STOOD]->(g:Standing) WHERE g.day_first <= $as_of
                    RETURN g ORDER BY g.position DESC LIMIT 1 }) AS g
RETURN u.unit AS unit,
       coalesce(
         head(COLLECT { MATCH (u)-[:BEARS]->(t:Tag) WHERE t.day_first <= $as_of
                        RETURN t.tag ORDER BY t.position DESC LIMIT 1 }),
         head(COLLECT { MATCH (u)-[:BEARS]->(t:Tag)
                        RETURN t.tag ORDER BY t.position LIMIT 1 })) AS tag,
       u.nature AS nature,
       g.pending AS pending,
       coalesce(g.growing, 0) AS growing,
       g.recorded_order AS standing_order,
       reduce(sum = 0, change IN COLLECT {
         MATCH (u)-[:LEFT]->(x:Leaving) WHERE x.reason IN ['sold', 'returned'] AND x.day_first <= $as_of
         RETURN CASE x.reason WHEN 'sold' THEN x.count ELSE -x.count END } | sum + change) AS sold,
       head(COLLECT { MATCH (u)-[:LEFT]->(x:Leaving)
                      WHERE NOT x.reason IN ['returned', 'unworked'] AND x.day_first <= $as_of
                      RETURN x.reason ORDER BY x.position DESC LIMIT 1 }) AS reason,
       head(COLLECT { MATCH (u)-[n:NAMED]->(k:Cultivar) WHERE n.day_first <= $as_of
                      RETURN k.cultivar ORDER BY n.is_true DESC, n.position DESC LIMIT 1 }) AS cultivar
ORDER BY unit
