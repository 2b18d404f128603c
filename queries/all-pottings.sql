-- all-pottings: every time by a day that units were put into a container or into open ground, in whole numbers
-- in: as_of
-- out: unit, day, precision
-- sort: unit, then the order of its timeline
-- day: the first that it may be; precision: 0 day, 1 month, 2 year
SELECT unit,
       CASE length(day) WHEN 10 THEN unixepoch(day) ELSE unixepoch(day_first) END / 86400 AS day,
       CASE length(day) WHEN 10 THEN 0 WHEN 7 THEN 1 ELSE 2 END AS precision
FROM potting
WHERE day <= :as_of
ORDER BY unit, position;
