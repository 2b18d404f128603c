-- tags-of-units: the tag that each of some units bore on a day, or its first where it had none yet
-- in: units, as_of
-- out: unit, tag
-- sort: unit
SELECT u.unit,
       (SELECT tag FROM tag WHERE unit = u.unit
        ORDER BY day_first <= :as_of DESC, CASE WHEN day_first <= :as_of THEN -position ELSE position END
        LIMIT 1) AS tag
FROM json_each('[' || :units || ']') j
CROSS JOIN unit u ON u.unit = j.value
ORDER BY u.unit;
