-- all-names: what each unit is by its own entries on a day, in whole numbers: the last true determination, else the
-- last name said of it
-- in: as_of
-- out: unit, cultivar, is_true
-- sort: unit
-- cultivar: its place in the answer to "cultivars-in-use", from 0; is_true: 1 where it was determined, else 0
WITH word (cultivar, place) AS (
  SELECT cultivar, row_number() OVER (ORDER BY cultivar) - 1
  FROM (SELECT DISTINCT cultivar FROM naming)
),
latest (unit, cultivar, is_true, rank) AS (
  SELECT unit, cultivar, is_true, max(is_true * 1000000 + position)
  FROM naming
  WHERE day <= :as_of
  GROUP BY unit
)
SELECT l.unit, w.place AS cultivar, l.is_true
FROM latest l
JOIN word w ON w.cultivar = l.cultivar
ORDER BY l.unit;
