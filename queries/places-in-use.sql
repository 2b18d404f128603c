-- places-in-use: every place that a unit stood in
-- in: none
-- out: place
-- sort: place
WITH RECURSIVE found (place) AS (         -- from place to place in the index, not through every stay
  SELECT min(place) FROM stay
  UNION ALL
  SELECT (SELECT min(s.place) FROM stay s WHERE s.place > f.place) FROM found f WHERE f.place IS NOT NULL
)
SELECT place FROM found WHERE place IS NOT NULL ORDER BY place;
