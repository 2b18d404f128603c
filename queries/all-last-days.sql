-- all-last-days: the last day up to a day on which an entry that names a unit was done, as first written, in whole
-- numbers; entries crossed out since are left out
-- in: as_of
-- out: unit, day
-- sort: unit
-- day: the first day that it may have been
SELECT i.unit,
       max(CASE length(e.day) WHEN 10 THEN unixepoch(e.day) ELSE unixepoch(e.day_first) END) / 86400 AS day
FROM involvement i
CROSS JOIN entry e ON e.recorded_order = i.recorded_order
WHERE e.day <= :as_of
  AND NOT EXISTS (
        SELECT 1
        FROM amendment a
        CROSS JOIN entry c ON c.recorded_order = a.amendment
        WHERE a.target = e.recorded_order AND c.kind = 'crossed-out')
GROUP BY i.unit
ORDER BY i.unit;
