// units: the units begun by a day that are of some natures, there or not, and in some places, with how they stood then
// in: as_of, natures, places, gone
// out: unit, tag, nature, begun, pending, growing, standing_order, reason, place, since, container
// sort: unit
// natures and places are texts with a line end before, between and after the words; no places stand for all;
// gone is 1 when units of which nothing is left are asked for too
MATCH (u:Unit)
WHERE u.day_first <= $as_of AND $natures CONTAINS '\n' + u.nature + '\n'
WITH u,
     head(COLLECT { MATCH (u)-[:STOOD]->(g:Standing) WHERE g.day_first <= $as_of
                    RETURN g ORDER BY g.position DESC LIMIT 1 }) AS g
WHERE $gone = 1 OR g.pending > 0 OR g.growing > 0 OR g IS NOT NULL AND g.pending IS NULL
WITH u, g,
     head(COLLECT { MATCH (u)-[s:STOOD_AT]->(p:Place) WHERE s.day_first <= $as_of
                    RETURN {place: p.place, day: s.day} ORDER BY s.position DESC LIMIT 1 }) AS s
WHERE $places IS NULL OR $places CONTAINS '\n' + s.place + '\n'
RETURN u.unit AS unit,
       head(COLLECT { MATCH (u)-[:BEARS]->(t:Tag) WHERE t.day_first <= $as_of
                      RETURN t.tag ORDER BY t.position DESC LIMIT 1 }) AS tag,
       u.nature AS nature,
       u.day AS begun,
       g.pending AS pending,
       coalesce(g.growing, 0) AS growing,
       g.recorded_order AS standing_order,
       head(COLLECT { MATCH (u)-[:LEFT]->(x:Leaving)
                      WHERE x.day_first <= $as_of AND NOT x.reason IN ['returned', 'unworked']
                      RETURN x.reason ORDER BY x.position DESC LIMIT 1 }) AS reason,
       s.place AS place,
       s.day AS since,
       head(COLLECT { MATCH (u)-[:POTTED]->(o:Potting) WHERE o.day_first <= $as_of
                      RETURN o.container ORDER BY o.position DESC LIMIT 1 }) AS container
ORDER BY unit
