-- standings-of-unit: how many units there were under a tag after each change
-- in: unit
-- out: pending, growing, day, recorded_order
-- sort: the order of the unit's timeline
SELECT pending, growing, day, recorded_order FROM standing WHERE unit = :unit ORDER BY position;
