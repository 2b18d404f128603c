-- all-outcomes: what had become of the units of every cohort by a day, in whole numbers
-- in: as_of
-- out: unit, fate, count, day, precision
-- sort: unit, then the order of its timeline
-- fate: 0 taken, 1 failed, 2 withdrawn, 3 not seen, 4 moved on, 5 found more, 6 still on
-- day: the first that it may be; precision: 0 day, 1 month, 2 year
SELECT unit,
       CASE fate
         WHEN 'taken' THEN 0
         WHEN 'failed' THEN 1
         WHEN 'still-on' THEN 6
         WHEN 'withdrawn' THEN 2
         WHEN 'not-seen' THEN 3
         WHEN 'moved-on' THEN 4
         WHEN 'found-more' THEN 5 END AS fate,
       count,
       CASE length(day) WHEN 10 THEN unixepoch(day) ELSE unixepoch(day_first) END / 86400 AS day,
       CASE length(day) WHEN 10 THEN 0 WHEN 7 THEN 1 ELSE 2 END AS precision
FROM outcome
WHERE day <= :as_of
ORDER BY unit, position;
