-- links-of-unit: the units that a unit comes from
-- in: unit
-- out: child, mother, act, day, recorded_order, count
-- sort: the order of the unit's timeline
SELECT child, mother, act, day, recorded_order, count FROM link WHERE child = :unit ORDER BY position;
