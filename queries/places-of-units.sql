-- places-of-units: where some units stood on a day; those of which nobody said are left out
-- in: units, as_of
-- out: unit, place
-- sort: unit
SELECT s.unit, s.place
FROM json_each('[' || :units || ']') j
CROSS JOIN stay s
  ON s.unit = j.value
 AND s.position = (SELECT max(x.position) FROM stay x WHERE x.unit = j.value AND x.day_first <= :as_of)
ORDER BY s.unit;
