// all-units: every unit, each in one whole number, for numbers are what it takes time to hand over
// in: none
// out: unit
// sort: unit
// from the right: 2 bits precision (0 day, 1 month, 2 year), 2 bits nature (0 plant, 1 layer, 2 batch, 3 sport),
// 24 bits the first day that it may have begun (days since 1970 and 2^20 more), the rest the unit
MATCH (u:Unit)
WITH u, duration.inDays(date('1970-01-01'), date(u.day_first)).days AS day
ORDER BY u.unit
RETURN u.unit * 268435456
       + (day + 1048576) * 16
       + CASE u.nature WHEN 'plant' THEN 0 WHEN 'layer' THEN 4 WHEN 'batch' THEN 8 WHEN 'sport' THEN 12 END
       + CASE size(u.day) WHEN 10 THEN 0 WHEN 7 THEN 1 ELSE 2 END AS unit
