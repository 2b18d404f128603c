-- stays-of-unit: the places that a unit stood in
-- in: unit
-- out: place, day, recorded_order
-- sort: the order of the unit's timeline
SELECT place, day, recorded_order FROM stay WHERE unit = :unit ORDER BY position;
