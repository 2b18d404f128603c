// all-leavings: the units that left their tags by a day, and those that came back, in whole numbers
// in: as_of
// out: unit, reason, count, day, precision
// sort: unit, then the order of its timeline
// reason: 0 sold, 1 returned, 2 lost, 3 culled, 4 surplus, 5 failed, 6 withdrawn, 7 not seen, 8 moved on, 9 worked,
// 10 unworked, 11 used up
// day: the first that it may be; precision: 0 day, 1 month, 2 year
MATCH (x:Leaving)
WHERE x.day <= $as_of
WITH x ORDER BY x.unit, x.position
RETURN x.unit AS unit,
       CASE x.reason
         WHEN 'sold' THEN 0
         WHEN 'returned' THEN 1
         WHEN 'lost' THEN 2
         WHEN 'culled' THEN 3
         WHEN 'surplus' THEN 4
         WHEN 'failed' THEN 5
         WHEN 'withdrawn' THEN 6
         WHEN 'not-seen' THEN 7
         WHEN 'moved-on' THEN 8
         WHEN 'worked' THEN 9
         WHEN 'unworked' THEN 10
         WHEN 'used-up' THEN 11 END AS reason,
       x.count AS count,
       duration.inDays(date('1970-01-01'), date(x.day_first)).days AS day,
       CASE size(x.day) WHEN 10 THEN 0 WHEN 7 THEN 1 ELSE 2 END AS precision
