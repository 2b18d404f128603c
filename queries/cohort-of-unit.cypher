// cohort-of-unit: how a unit counts for take
// in: unit
// out: method, day, recorded_order, by_person, count, root
// sort: one row at most
MATCH (u:Unit {unit: $unit})
WHERE u.method IS NOT NULL
RETURN u.method AS method, u.set_day AS day, u.set_order AS recorded_order, u.by_person AS by_person,
       u.count AS count, u.root AS root
