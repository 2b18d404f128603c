-- all-places: where each unit stood on a day, in whole numbers; units of which nobody said are left out
-- in: as_of
-- out: unit, place
-- sort: unit
-- place: its place in the answer to "places-in-use", from 0
WITH RECURSIVE found (place, number) AS (         -- from place to place in the index, not through every stay
  SELECT min(place), 0 FROM stay
  UNION ALL
  SELECT (SELECT min(s.place) FROM stay s WHERE s.place > f.place), f.number + 1
  FROM found f
  WHERE f.place IS NOT NULL
),
word (place, number) AS MATERIALIZED (
  SELECT place, number FROM found WHERE place IS NOT NULL
),
latest (unit, place, rank) AS (
  SELECT unit, place, max(position)
  FROM stay
  WHERE day <= :as_of
  GROUP BY unit
)
SELECT l.unit, w.number AS place
FROM latest l
JOIN word w ON w.place = l.place
ORDER BY l.unit;
