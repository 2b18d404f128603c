-- all-signs: what by a day shows a unit alive, but for pottings and returns, in whole numbers,
-- and since when it was stock; entries amended since are left out
-- in: as_of
-- out: unit, what, day, precision, value
-- sort: unit, then the order in which they were recorded
-- what: 0 alive, 1 its stem measured, 2 graded, 3 kept as stock, 4 no longer stock; day: the first that it may be;
-- precision: 0 day, 1 month, 2 year; value: the stem in hundredths of a millimetre, or the place of the size class
-- in the answer to "sizes-in-use", from 0, or of a
-- check 1 where it found roots and 2 where it did not
WITH word (size, place) AS (
  SELECT size, row_number() OVER (ORDER BY size) - 1
  FROM (SELECT DISTINCT json_extract(fields, '$.size') AS size FROM entry WHERE kind = 'graded')
)
SELECT i.unit,
       CASE e.kind
         WHEN 'measured' THEN json_extract(e.fields, '$.stem_mm') IS NOT NULL
         WHEN 'graded' THEN 2
         WHEN 'kept-as-stock' THEN 3
         WHEN 'released' THEN 4
         ELSE 0 END AS what,
       CASE length(e.day) WHEN 10 THEN unixepoch(e.day) ELSE unixepoch(e.day_first) END / 86400 AS day,
       CASE length(e.day) WHEN 10 THEN 0 WHEN 7 THEN 1 ELSE 2 END AS precision,
       CASE e.kind
         WHEN 'measured' THEN CAST(round(json_extract(e.fields, '$.stem_mm') * 100.0) AS INTEGER)
         WHEN 'checked' THEN CASE WHEN json_extract(e.fields, '$.findings') LIKE '%root%' THEN 1 ELSE 2 END
         WHEN 'graded' THEN (SELECT place FROM word WHERE word.size = json_extract(e.fields, '$.size')) END AS value
FROM involvement i
CROSS JOIN entry e ON e.recorded_order = i.recorded_order
WHERE e.day <= :as_of
  AND e.kind IN ('checked', 'reworked', 'lifted', 'moved', 'measured', 'seen', 'kept-as-stock',
                 'left-long', 'cut-back', 'graded', 'counted', 'released')
  AND (e.kind <> 'released' OR coalesce(json_extract(e.fields, '$.from'), 'stock') = 'stock')
  AND NOT EXISTS (SELECT 1 FROM amendment a WHERE a.target = e.recorded_order)
ORDER BY i.unit, i.recorded_order;
