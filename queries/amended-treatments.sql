-- amended-treatments: the units that were set, struck, worked or sown by an entry that was amended since
-- in: none
-- out: unit, recorded_order, position
-- sort: unit
SELECT u.unit, u.recorded_order, u.position
FROM unit u
CROSS JOIN entry e ON e.recorded_order = u.recorded_order
WHERE e.kind IN ('layer-set', 'cuttings-struck', 'graft-worked', 'seed-sown')
  AND EXISTS (SELECT 1 FROM amendment a WHERE a.target = e.recorded_order)
ORDER BY u.unit;
