-- tariff: the entries that list costs and prices
-- in: none
-- out: recorded_order, id, kind, day, by_person, recorded_at, fields
-- sort: recorded_order
SELECT recorded_order, id, kind, day, by_person, recorded_at, fields
FROM entry INDEXED BY entry_tariff
WHERE kind IN ('cost-listed', 'price-listed')
ORDER BY recorded_order;
