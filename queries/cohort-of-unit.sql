-- cohort-of-unit: how a unit counts for take
-- in: unit
-- out: method, day, recorded_order, by_person, count, root
-- sort: one row at most
SELECT method, day, recorded_order, by_person, count, root FROM cohort WHERE unit = :unit;
