-- all-units: every unit, in whole numbers
-- in: none
-- out: unit, nature, day, precision
-- sort: unit
-- nature: 0 plant, 1 layer, 2 batch, 3 sport; day: the first day that it may have begun; precision: 0 day, 1 month,
-- 2 year
SELECT unit,
       CASE nature WHEN 'layer' THEN 1 WHEN 'plant' THEN 0 WHEN 'batch' THEN 2 WHEN 'sport' THEN 3 END AS nature,
       CASE length(day) WHEN 10 THEN unixepoch(day) ELSE unixepoch(day_first) END / 86400 AS day,
       CASE length(day) WHEN 10 THEN 0 WHEN 7 THEN 1 ELSE 2 END AS precision
FROM unit
ORDER BY unit;
