-- stays-of-units: the places that some units stood in by a day
-- in: units, as_of
-- out: unit, place, day, recorded_order
-- sort: unit, then the order of its timeline
-- units is a text of numbers with commas between them
SELECT s.unit, s.place, s.day, s.recorded_order
FROM json_each('[' || :units || ']') u
CROSS JOIN stay s ON s.unit = u.value
WHERE s.day_first <= :as_of
ORDER BY s.unit, s.position;
