-- units-at-place: every unit that stands in one place on a day and is not gone, as far as the book knows
-- in: place, as_of
-- out: unit, tag, since, pending, growing
-- sort: unit
SELECT s.unit,
       (SELECT t.tag FROM tag t WHERE t.unit = s.unit AND t.day_first <= :as_of
        ORDER BY t.position DESC LIMIT 1) AS tag,
       s.day AS since,
       g.pending,
       g.growing
FROM stay s
JOIN standing g
  ON g.unit = s.unit
 AND g.position = (SELECT max(x.position) FROM standing x WHERE x.unit = s.unit AND x.day_first <= :as_of)
WHERE s.place = :place
  AND s.position = (SELECT max(x.position) FROM stay x WHERE x.unit = s.unit AND x.day_first <= :as_of)
  AND (g.pending IS NULL OR g.pending > 0 OR g.growing > 0)
ORDER BY s.unit;
