-- namings-of-units: the cultivars that some units were said or found to be by a day
-- in: units, as_of
-- out: unit, cultivar, is_true, day, recorded_order
-- sort: unit, then the order of its timeline
-- units is a text of numbers with commas between them
SELECT n.unit, n.cultivar, n.is_true, n.day, n.recorded_order
FROM json_each('[' || :units || ']') u
CROSS JOIN naming n ON n.unit = u.value
WHERE n.day_first <= :as_of
ORDER BY n.unit, n.position;
