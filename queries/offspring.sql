-- offspring: the links that lead from a unit down to what was raised from it
-- in: unit
-- out: child, mother, act, day, recorded_order, count
-- sort: child, recorded_order, act, position
SELECT child, mother, act, day, recorded_order, count
FROM link WHERE mother = :unit
ORDER BY child, recorded_order, act, position;
