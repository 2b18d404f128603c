-- entries-that-mark: the entries that keep units as stock, hold or reserve them, or end that, crossed-out ones too
-- in: none
-- out: recorded_order
-- sort: recorded_order
SELECT recorded_order FROM entry
WHERE kind IN ('kept-as-stock', 'released', 'held', 'cleared', 'reserved')
ORDER BY recorded_order;
