// units-at-place: every unit that stands in one place on a day and is not gone, as far as the book knows
// in: place, as_of
// out: unit, tag, since, pending, growing
// sort: unit
MATCH (p:Place {place: $place})<-[:STOOD_AT]-(u:Unit)
WITH DISTINCT u
WITH u,
     head(COLLECT { MATCH (u)-[s:STOOD_AT]->(p:Place) WHERE s.day_first <= $as_of
                    RETURN {place: p.place, day: s.day} ORDER BY s.position DESC LIMIT 1 }) AS s,
     head(COLLECT { MATCH (u)-[:STOOD]->(g:Standing) WHERE g.day_first <= $as_of
                    RETURN g ORDER BY g.position DESC LIMIT 1 }) AS g
WHERE s.place = $place AND g IS NOT NULL AND (g.pending IS NULL OR g.pending > 0 OR g.growing > 0)
RETURN u.unit AS unit,
       head(COLLECT { MATCH (u)-[:BEARS]->(t:Tag) WHERE t.day_first <= $as_of
                      RETURN t.tag ORDER BY t.position DESC LIMIT 1 }) AS tag,
       s.day AS since, g.pending AS pending, g.growing AS growing
ORDER BY unit
