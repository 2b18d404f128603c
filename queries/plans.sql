-- plans: the entries that keep plans
-- in: none
-- out: recorded_order, id, kind, day, by_person, recorded_at, fields
-- sort: recorded_order
SELECT recorded_order, id, kind, day, by_person, recorded_at, fields
FROM entry INDEXED BY entry_plan
WHERE kind = 'planned'
ORDER BY recorded_order;
