// all-cohorts: every cohort that was set by a day, in whole numbers; one that was split off may not have been there yet
// in: as_of
// out: unit, method, day, precision, by_person, count, root
// sort: unit
// method: 0 layer, 1 cutting, 2 graft, 3 seed; day: the first day that it may have been; precision: 0 day, 1 month,
// 2 year
MATCH (u:Unit)
WHERE u.set_day <= $as_of
RETURN u.unit AS unit,
       CASE u.method WHEN 'layer' THEN 0 WHEN 'cutting' THEN 1 WHEN 'graft' THEN 2 WHEN 'seed' THEN 3 END AS method,
       duration.inDays(date('1970-01-01'), date(u.set_day_first)).days AS day,
       CASE size(u.set_day) WHEN 10 THEN 0 WHEN 7 THEN 1 ELSE 2 END AS precision,
       u.by_person AS by_person,
       u.count AS count,
       u.root AS root
ORDER BY unit
