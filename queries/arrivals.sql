-- arrivals: the entries that begin units by something else than an act on another unit, but for its seed or pollen
-- in: none
-- out: recorded_order
-- sort: recorded_order
SELECT DISTINCT u.recorded_order
FROM unit u
WHERE NOT EXISTS (SELECT 1 FROM link l WHERE l.child = u.unit AND l.act NOT IN ('SEED_OF', 'POLLEN_OF'))
ORDER BY u.recorded_order;
