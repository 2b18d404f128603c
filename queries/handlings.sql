-- handlings: the entries by which hands or tools touched plants, with the day and who did it, crossed-out ones too
-- in: as_of
-- out: recorded_order, day, by_person, is_amended
-- sort: recorded_order
-- An entry that was amended may say something else by now: it must be read itself, whenever it was done.
SELECT e.recorded_order, e.day, e.by_person,
       EXISTS (SELECT 1 FROM amendment a WHERE a.target = e.recorded_order) AS is_amended
FROM entry e
WHERE e.kind IN ('layer-set', 'cuttings-struck', 'graft-worked', 'divided', 'checked', 'reworked', 'taken', 'severed',
                 'drawn', 'potted', 'planted-out', 'lifted', 'measured', 'cut-back', 'split', 'merged', 'culled')
  AND (e.day_first <= :as_of OR EXISTS (SELECT 1 FROM amendment a WHERE a.target = e.recorded_order))
ORDER BY e.recorded_order;
