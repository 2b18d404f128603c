-- entries-since: every entry after a recorded order, amendments and crossed-out ones too
-- in: recorded_order
-- out: recorded_order, id, kind, day, by_person, recorded_at, fields, digest
-- sort: recorded_order
SELECT recorded_order, id, kind, day, by_person, recorded_at, fields, digest
FROM entry WHERE recorded_order > :recorded_order ORDER BY recorded_order;
