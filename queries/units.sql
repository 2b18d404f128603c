-- units: the units begun by a day that are of some natures, there or not, and in some places, with how they stood then
-- in: as_of, natures, places, gone
-- out: unit, tag, nature, begun, pending, growing, standing_order, reason, place, since, container
-- sort: unit
-- natures and places are texts with a line end before, between and after the words; no places stand for all;
-- gone is 1 when units of which nothing is left are asked for too
SELECT u.unit,
       (SELECT t.tag FROM tag t WHERE t.unit = u.unit AND t.day_first <= :as_of
        ORDER BY t.position DESC LIMIT 1) AS tag,
       u.nature,
       u.day AS begun,
       g.pending,
       coalesce(g.growing, 0) AS growing,
       g.recorded_order AS standing_order,
       x.reason,
       s.place,
       s.day AS since,
       p.container
FROM unit u
LEFT JOIN standing g
  ON g.unit = u.unit
 AND g.position = (SELECT max(h.position) FROM standing h WHERE h.unit = u.unit AND h.day_first <= :as_of)
LEFT JOIN stay s
  ON s.unit = u.unit
 AND s.position = (SELECT max(r.position) FROM stay r WHERE r.unit = u.unit AND r.day_first <= :as_of)
LEFT JOIN leaving x
  ON x.unit = u.unit
 AND x.position = (SELECT max(y.position) FROM leaving y
                   WHERE y.unit = u.unit AND y.day_first <= :as_of AND y.reason NOT IN ('returned', 'unworked'))
LEFT JOIN potting p
  ON p.unit = u.unit
 AND p.position = (SELECT max(o.position) FROM potting o WHERE o.unit = u.unit AND o.day_first <= :as_of)
WHERE u.day_first <= :as_of
  AND instr(:natures, char(10) || u.nature || char(10)) > 0
  AND (:gone = 1 OR g.pending > 0 OR g.growing > 0 OR g.pending IS NULL AND g.unit IS NOT NULL)
  AND (:places IS NULL OR instr(:places, char(10) || s.place || char(10)) > 0)
ORDER BY u.unit;
