-- outcomes-of-unit: what became of the units of a cohort
-- in: unit
-- out: fate, count, cause, day, recorded_order
-- sort: the order of the unit's timeline
SELECT fate, count, cause, day, recorded_order FROM outcome WHERE unit = :unit ORDER BY position;
