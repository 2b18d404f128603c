-- last-of-kind: the last entry of a kind that was recorded
-- in: kind
-- out: recorded_order
-- sort: one row at most
SELECT recorded_order FROM entry WHERE kind = :kind ORDER BY recorded_order DESC LIMIT 1;
