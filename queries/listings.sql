-- listings: the entries that list cultivars and places
-- in: none
-- out: recorded_order, id, kind, day, by_person, recorded_at, fields
-- sort: recorded_order
SELECT recorded_order, id, kind, day, by_person, recorded_at, fields
FROM entry INDEXED BY entry_listing
WHERE kind IN ('cultivar-listed', 'place-listed')
ORDER BY recorded_order;
