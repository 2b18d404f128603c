// recorded-between: the entries recorded from one instant on and before another, amendments and crossed-out ones too
// in: from, until
// out: recorded_order, by_person
// sort: recorded_order
MATCH (e:Entry)
WHERE e.recorded_at >= $from AND e.recorded_at < $until
RETURN e.recorded_order AS recorded_order, e.by_person AS by_person
ORDER BY recorded_order
