// order-by-instant: the last entry that was recorded at or before an instant, 0 where there is none
// in: instant
// out: recorded_order
// sort: one row
MATCH (e:Entry)
WHERE e.recorded_at <= $instant
RETURN coalesce(max(e.recorded_order), 0) AS recorded_order
