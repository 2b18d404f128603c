-- tags-of-unit: every tag that a unit bears or bore, the present one last
-- in: unit
-- out: tag, day, recorded_order
-- sort: the order in which they were tied on
SELECT tag, day, recorded_order FROM tag WHERE unit = :unit ORDER BY position;
