-- standings-of-units: how many of some units there were under their tags after each change by a day
-- in: units, as_of
-- out: unit, pending, growing, day, recorded_order
-- sort: unit, then the order of its timeline
-- units is a text of numbers with commas between them
SELECT g.unit, g.pending, g.growing, g.day, g.recorded_order
FROM json_each('[' || :units || ']') u
CROSS JOIN standing g ON g.unit = u.value
WHERE g.day_first <= :as_of
ORDER BY g.unit, g.position;
