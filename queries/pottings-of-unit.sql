-- pottings-of-unit: the containers of a unit; none where it was planted in open ground
-- in: unit
-- out: container, day, recorded_order
-- sort: the order of the unit's timeline
SELECT container, day, recorded_order FROM potting WHERE unit = :unit ORDER BY position;
