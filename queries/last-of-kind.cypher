// last-of-kind: the last entry of a kind that was recorded
// in: kind
// out: recorded_order
// sort: one row at most
MATCH (e:Entry)
WHERE e.kind = $kind
RETURN e.recorded_order AS recorded_order
ORDER BY recorded_order DESC
LIMIT 1
