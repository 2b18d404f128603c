-- names: what each unit is by its own entries on a day: the last true determination, else the last name said of it
-- in: as_of
-- out: unit, cultivar
-- sort: unit
SELECT unit, cultivar
FROM (SELECT unit, cultivar, max(is_true * 1000000 + position) FROM naming WHERE day_first <= :as_of GROUP BY unit)
ORDER BY unit;
