// all-units: every unit, in whole numbers
// in: none
// out: unit, nature, day, precision
// sort: unit
// nature: 0 plant, 1 layer, 2 batch, 3 sport; day: the first day that it may have begun; precision: 0 day, 1 month,
// 2 year
MATCH (u:Unit)
RETURN u.unit AS unit,
       CASE u.nature WHEN 'plant' THEN 0 WHEN 'layer' THEN 1 WHEN 'batch' THEN 2 WHEN 'sport' THEN 3 END AS nature,
       duration.inDays(date('1970-01-01'), date(u.day_first)).days AS day,
       CASE size(u.day) WHEN 10 THEN 0 WHEN 7 THEN 1 ELSE 2 END AS precision
ORDER BY unit
