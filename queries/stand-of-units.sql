-- stand-of-units: what some units are, and how they stood on a day
-- in: units, as_of
-- out: unit, tag, nature, pending, growing, standing_order, sold, reason, cultivar
-- sort: unit
-- pending is absent where nobody counted; reason is that of the last leaving; cultivar the unit's own name
SELECT u.unit,
       (SELECT tag FROM tag WHERE unit = u.unit
        ORDER BY day_first <= :as_of DESC, CASE WHEN day_first <= :as_of THEN -position ELSE position END
        LIMIT 1) AS tag,
       u.nature,
       g.pending,
       coalesce(g.growing, 0) AS growing,
       g.recorded_order AS standing_order,
       (SELECT coalesce(sum(CASE reason WHEN 'sold' THEN count ELSE -count END), 0) FROM leaving
        WHERE unit = u.unit AND reason IN ('sold', 'returned') AND day_first <= :as_of) AS sold,
       (SELECT reason FROM leaving
        WHERE unit = u.unit AND reason NOT IN ('returned', 'unworked') AND day_first <= :as_of
        ORDER BY position DESC LIMIT 1) AS reason,
       (SELECT cultivar FROM naming WHERE unit = u.unit AND day_first <= :as_of
        ORDER BY is_true DESC, position DESC LIMIT 1) AS cultivar
FROM json_each('[' || :units || ']') j
CROSS JOIN unit u ON u.unit = j.value
LEFT JOIN standing g
  ON g.unit = u.unit
 AND g.position = (SELECT max(h.position) FROM standing h WHERE h.unit = u.unit AND h.day_first <= :as_of)
ORDER BY u.unit;
