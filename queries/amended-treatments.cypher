// amended-treatments: the units that were set, struck, worked or sown by an entry that was amended since
// in: none
// out: unit, recorded_order, position
// sort: unit
MATCH (e:Entry)
WHERE e.kind IN ['layer-set', 'cuttings-struck', 'graft-worked', 'seed-sown'] AND EXISTS { (:Entry)-[:AMENDS]->(e) }
MATCH (e)-[:NAMES]->(u:Unit)
WHERE u.recorded_order = e.recorded_order
RETURN u.unit AS unit, u.recorded_order AS recorded_order, u.position AS position
ORDER BY unit
