-- amended-signs: the entries of the kinds of "all-signs" that were amended since, whenever they were done
-- in: none
-- out: recorded_order
-- sort: recorded_order
SELECT recorded_order
FROM entry e
WHERE kind IN ('checked', 'reworked', 'lifted', 'moved', 'measured', 'seen', 'kept-as-stock',
               'left-long', 'cut-back', 'graded', 'counted', 'released')
  AND EXISTS (SELECT 1 FROM amendment a WHERE a.target = e.recorded_order)
ORDER BY recorded_order;
