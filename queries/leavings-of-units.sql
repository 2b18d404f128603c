-- leavings-of-units: how many of some units left their tags by a day, and why
-- in: units, as_of
-- out: unit, reason, count, person, day, recorded_order
-- sort: unit, then the order of its timeline
-- units is a text of numbers with commas between them
SELECT l.unit, l.reason, l.count, l.person, l.day, l.recorded_order
FROM json_each('[' || :units || ']') u
CROSS JOIN leaving l ON l.unit = u.value
WHERE l.day_first <= :as_of
ORDER BY l.unit, l.position;
