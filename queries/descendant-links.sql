-- descendant-links: the links between the units that "descendants" finds
-- in: unit, most
-- out: child, mother, act, day, recorded_order, count
-- sort: child, recorded_order, act, mother
WITH RECURSIVE family (unit) AS (
  SELECT :unit
  UNION
  SELECT l.child FROM family f CROSS JOIN link l ON l.mother = f.unit
  LIMIT :most
)
SELECT l.child, l.mother, l.act, l.day, l.recorded_order, l.count
FROM family f
CROSS JOIN link l ON l.mother = f.unit
WHERE l.child IN (SELECT unit FROM family)
ORDER BY l.child, l.recorded_order, l.act, l.mother;
