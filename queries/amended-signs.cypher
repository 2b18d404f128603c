// amended-signs: the entries of the kinds of "all-signs" that were amended since, whenever they were done
// in: none
// out: recorded_order
// sort: recorded_order
MATCH (e:Entry)
WHERE e.kind IN ['checked', 'reworked', 'lifted', 'moved', 'measured', 'seen', 'kept-as-stock',
                 'left-long', 'cut-back', 'graded', 'counted', 'released']
  AND EXISTS { (:Entry)-[:AMENDS]->(e) }
RETURN e.recorded_order AS recorded_order
ORDER BY recorded_order
