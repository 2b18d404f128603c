-- recorded-between: the entries recorded from one instant on and before another, amendments and crossed-out ones too
-- in: from, until
-- out: recorded_order, by_person
-- sort: recorded_order
SELECT recorded_order, by_person FROM entry
WHERE recorded_at >= :from AND recorded_at < :until
ORDER BY recorded_order;
