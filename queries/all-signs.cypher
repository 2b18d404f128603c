// all-signs: what by a day shows a unit alive, but for pottings and returns, in whole numbers,
// and since when it was stock; entries amended since are left out
// in: as_of
// out: unit, what, day, precision, value
// sort: unit, then the order in which they were recorded
// what: 0 alive, 1 its stem measured, 2 graded, 3 kept as stock, 4 no longer stock; day: the first that it may be;
// precision: 0 day, 1 month, 2 year; value: the stem in hundredths of a millimetre, or the place of the size class
// in the answer to "sizes-in-use", from 0, or of a
// check 1 where it found roots and 2 where it did not
CALL () {
  MATCH (g:Entry {kind: 'graded'})
  WITH DISTINCT g.size AS size
  ORDER BY size
  RETURN collect(size) AS sizes
}
MATCH (e:Entry)
WHERE e.day <= $as_of
  AND e.kind IN ['checked', 'reworked', 'lifted', 'moved', 'measured', 'seen', 'kept-as-stock',
                 'left-long', 'cut-back', 'graded', 'counted', 'released']
  AND (e.kind <> 'released' OR coalesce(e.from, 'stock') = 'stock')
  AND NOT EXISTS { (:Entry)-[:AMENDS]->(e) }
MATCH (e)-[:NAMES]->(u:Unit)
WITH u.unit AS unit, e, sizes
ORDER BY unit, e.recorded_order
RETURN unit,
       CASE e.kind
         WHEN 'measured' THEN CASE WHEN e.stem_mm IS NOT NULL THEN 1 ELSE 2 END
         WHEN 'graded' THEN 2
         WHEN 'kept-as-stock' THEN 3
         WHEN 'released' THEN 4
         ELSE 0 END AS what,
       duration.inDays(date('1970-01-01'), date(e.day_first)).days AS day,
       CASE size(e.day) WHEN 10 THEN 0 WHEN 7 THEN 1 ELSE 2 END AS precision,
       CASE e.kind
         WHEN 'measured' THEN toInteger(round(toFloat(e.stem_mm) * 100.0))
         WHEN 'checked' THEN CASE WHEN e.findings CONTAINS 'root' THEN 1 ELSE 2 END
         WHEN 'graded' THEN [place IN range(0, size(sizes) - 1) WHERE sizes[place] = e.size][0] END AS value
