-- offspring-of-units: the links, made by a day, that lead from some units down to what was raised from them
-- in: units, as_of
-- out: child, mother, act, day, recorded_order, count
-- sort: mother, child, then the order of its timeline
-- units is a text of numbers with commas between them
SELECT l.child, l.mother, l.act, l.day, l.recorded_order, l.count
FROM json_each('[' || :units || ']') u
CROSS JOIN link l ON l.mother = u.value
WHERE l.day_first <= :as_of
ORDER BY l.mother, l.child, l.position;
