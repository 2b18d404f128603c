-- links-of-units: the links of some units, made by a day, to the units that they come from
-- in: units, as_of
-- out: child, mother, act, day, recorded_order, count
-- sort: child, then the order of its timeline
-- units is a text of numbers with commas between them
SELECT l.child, l.mother, l.act, l.day, l.recorded_order, l.count
FROM json_each('[' || :units || ']') u
CROSS JOIN link l ON l.child = u.value
WHERE l.day_first <= :as_of
ORDER BY l.child, l.position;
