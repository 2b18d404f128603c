-- entries-of-unit: every entry that names a unit, crossed-out ones too, amendments not
-- in: unit
-- out: recorded_order, id, kind, day, by_person, recorded_at, fields
-- sort: recorded_order
SELECT e.recorded_order, e.id, e.kind, e.day, e.by_person, e.recorded_at, e.fields
FROM involvement i
CROSS JOIN entry e ON e.recorded_order = i.recorded_order
WHERE i.unit = :unit
ORDER BY i.recorded_order;
