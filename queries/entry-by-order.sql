-- entry-by-order: the entry with a recorded order
-- in: recorded_order
-- out: recorded_order, id, kind, day, by_person, recorded_at, fields
-- sort: one row at most
SELECT recorded_order, id, kind, day, by_person, recorded_at, fields
FROM entry WHERE recorded_order = :recorded_order;
