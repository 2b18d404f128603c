-- all-units: every unit, each in one whole number, for numbers are what it takes time to hand over
-- in: none
-- out: unit
-- sort: unit
-- from the right: 2 bits precision (0 day, 1 month, 2 year), 2 bits nature (0 plant, 1 layer, 2 batch, 3 sport),
-- 24 bits the first day that it may have begun (days since 1970 and 2^20 more), the rest the unit
SELECT (unit << 28)
       + (((CASE length(day) WHEN 10 THEN unixepoch(day) ELSE unixepoch(day_first) END / 86400 + 1048576) << 4)
       + (CASE nature WHEN 'layer' THEN 4 WHEN 'plant' THEN 0 WHEN 'batch' THEN 8 WHEN 'sport' THEN 12 END)
       + (CASE length(day) WHEN 10 THEN 0 WHEN 7 THEN 1 ELSE 2 END)) AS unit
FROM unit u
ORDER BY u.unit;
