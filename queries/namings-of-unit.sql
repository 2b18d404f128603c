-- namings-of-unit: the cultivars that a unit was said or found to be
-- in: unit
-- out: cultivar, is_true, day, recorded_order
-- sort: the order of the unit's timeline
SELECT cultivar, is_true, day, recorded_order FROM naming WHERE unit = :unit ORDER BY position;
