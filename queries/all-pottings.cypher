// all-pottings: every time by a day that units were put into a container or into open ground, in whole numbers
// in: as_of
// out: unit, day, precision
// sort: unit, then the order of its timeline
// day: the first that it may be; precision: 0 day, 1 month, 2 year
MATCH (x:Potting)
WHERE x.day <= $as_of
WITH x ORDER BY x.unit, x.position
RETURN x.unit AS unit,
       duration.inDays(date('1970-01-01'), date(x.day_first)).days AS day,
       CASE size(x.day) WHEN 10 THEN 0 WHEN 7 THEN 1 ELSE 2 END AS precision
