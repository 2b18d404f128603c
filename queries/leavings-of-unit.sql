-- leavings-of-unit: units that left a tag for good, and why
-- in: unit
-- out: reason, count, person, day, recorded_order
-- sort: the order of the unit's timeline
SELECT reason, count, person, day, recorded_order FROM leaving WHERE unit = :unit ORDER BY position;
