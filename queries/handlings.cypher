// handlings: the entries by which hands or tools touched plants, with the day and who did it, crossed-out ones too
// in: as_of
// out: recorded_order, day, by_person, is_amended
// sort: recorded_order
// An entry that was amended may say something else by now: it must be read itself, whenever it was done.
MATCH (e:Entry)
WHERE e.kind IN ['layer-set', 'cuttings-struck', 'graft-worked', 'divided', 'checked', 'reworked', 'taken', 'severed',
                 'drawn', 'potted', 'planted-out', 'lifted', 'measured', 'cut-back', 'split', 'merged', 'culled']
WITH e, CASE WHEN EXISTS { (:Entry)-[:AMENDS]->(e) } THEN 1 ELSE 0 END AS is_amended
WHERE e.day_first <= $as_of OR is_amended = 1
RETURN e.recorded_order AS recorded_order, e.day AS day, e.by_person AS by_person, is_amended
ORDER BY recorded_order
