-- tag-uses-of-units: the tags that some units bore by a day, and those with which they began
-- in: units, as_of
-- out: unit, tag, day, recorded_order
-- sort: unit, then the order of its timeline
-- units is a text of numbers with commas between them
SELECT t.unit, t.tag, t.day, t.recorded_order
FROM json_each('[' || :units || ']') u
CROSS JOIN tag t ON t.unit = u.value
WHERE t.day_first <= :as_of OR t.position = 0
ORDER BY t.unit, t.position;
