-- natures-of-units: what some units are and when they began, those begun by a day
-- in: units, as_of
-- out: unit, nature, day, recorded_order
-- sort: unit
-- units is a text of numbers with commas between them
SELECT b.unit, b.nature, b.day, b.recorded_order
FROM json_each('[' || :units || ']') u
CROSS JOIN unit b ON b.unit = u.value
WHERE b.day_first <= :as_of
ORDER BY b.unit;
