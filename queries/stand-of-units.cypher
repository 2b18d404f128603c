// stand-of-units: what some units are, and how they stood on a day
// in: units, as_of
// out: unit, tag, nature, pending, growing, standing_order, sold, reason, cultivar
// sort: unit
// pending is absent where nobody counted; reason is that of the last leaving; cultivar the unit's own name
UNWIND split($units, ',') AS number
MATCH (u:Unit {unit: toInteger(number)})
OPTIONAL MATCH (u)-[:STOOD]->(g:Standing)
WHERE g.day_first <= $as_of
WITH u, g ORDER BY g.position
WITH u, collect({pending: g.pending, growing: g.growing, standing_order: g.recorded_order}) AS standings
WITH u, last(standings) AS g
OPTIONAL MATCH (u)-[:LEFT]->(x:Leaving)
WHERE x.day_first <= $as_of
WITH u, g, x ORDER BY x.position
WITH u, g,
     sum(CASE x.reason WHEN 'sold' THEN x.count WHEN 'returned' THEN -x.count ELSE 0 END) AS sold,
     last(collect(CASE WHEN NOT x.reason IN ['returned', 'unworked'] THEN x.reason END)) AS reason
OPTIONAL MATCH (u)-[n:NAMED]->(k:Cultivar)
WHERE n.day_first <= $as_of
WITH u, g, sold, reason, n, k ORDER BY n.is_true, n.position
WITH u, g, sold, reason, last(collect(k.cultivar)) AS cultivar
OPTIONAL MATCH (u)-[:BEARS]->(t:Tag)
WITH u, g, sold, reason, cultivar, t, t.day_first <= $as_of AS is_borne
ORDER BY is_borne, CASE WHEN is_borne THEN t.position ELSE -t.position END
WITH u, g, sold, reason, cultivar, last(collect(t.tag)) AS tag
RETURN u.unit AS unit, tag, u.nature AS nature, g.pending AS pending, coalesce(g.growing, 0) AS growing,
       g.standing_order AS standing_order, sold, reason, cultivar
ORDER BY unit
