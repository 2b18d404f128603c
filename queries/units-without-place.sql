-- units-without-place: every unit of which nobody said, when it began or was severed, where it stood
-- in: as_of
-- out: unit
-- sort: unit
SELECT u.unit
FROM unit u
WHERE u.day_first <= :as_of
  AND u.nature <> 'sport'
  AND NOT EXISTS (SELECT 1 FROM stay s WHERE s.unit = u.unit AND s.recorded_order = u.recorded_order)
ORDER BY u.unit;
