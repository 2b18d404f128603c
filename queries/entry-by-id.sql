-- entry-by-id: the entry with an identity
-- in: id
-- out: recorded_order, id, kind, day, by_person, recorded_at, fields
-- sort: one row at most
SELECT recorded_order, id, kind, day, by_person, recorded_at, fields
FROM entry WHERE id = unhex(:id, '-');
