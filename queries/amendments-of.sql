-- amendments-of: the corrections and crossings-out of one entry
-- in: recorded_order
-- out: recorded_order, id, kind, day, by_person, recorded_at, fields
-- sort: recorded_order
SELECT e.recorded_order, e.id, e.kind, e.day, e.by_person, e.recorded_at, e.fields
FROM amendment a
CROSS JOIN entry e ON e.recorded_order = a.amendment
WHERE a.target = :recorded_order
ORDER BY a.amendment;
