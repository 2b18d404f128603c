-- head: where the book stands
-- in: none
-- out: id, zone, recorded_order, digest, last_unit
-- sort: one row
SELECT b.id, b.zone, coalesce(e.recorded_order, 0) AS recorded_order, e.digest, b.last_unit
FROM book b
LEFT JOIN entry e ON e.recorded_order = (SELECT max(recorded_order) FROM entry);
