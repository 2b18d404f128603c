-- all-cohorts: every cohort that was set by a day, in whole numbers; one that was split off may not have been there yet
-- in: as_of
-- out: unit, method, day, precision, by_person, count, root
-- sort: unit
-- method: 0 layer, 1 cutting, 2 graft, 3 seed; day: the first day that it may have been; precision: 0 day, 1 month,
-- 2 year
SELECT unit,
       CASE method WHEN 'layer' THEN 0 WHEN 'cutting' THEN 1 WHEN 'graft' THEN 2 WHEN 'seed' THEN 3 END AS method,
       CASE length(day) WHEN 10 THEN unixepoch(day) ELSE unixepoch(day_first) END / 86400 AS day,
       CASE length(day) WHEN 10 THEN 0 WHEN 7 THEN 1 ELSE 2 END AS precision,
       by_person,
       count,
       root
FROM cohort
WHERE day <= :as_of
ORDER BY unit;
