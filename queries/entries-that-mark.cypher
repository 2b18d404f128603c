// entries-that-mark: the entries that keep units as stock, hold or reserve them, or end that, crossed-out ones too
// in: none
// out: recorded_order
// sort: recorded_order
MATCH (e:Entry)
WHERE e.kind IN ['kept-as-stock', 'released', 'held', 'cleared', 'reserved']
RETURN e.recorded_order AS recorded_order
ORDER BY recorded_order
