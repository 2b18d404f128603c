-- descendants: every unit raised from one, through every kind of link, nearest generations first, up to a number
-- in: unit, most
-- out: unit
-- sort: unit
WITH RECURSIVE family (unit) AS (
  SELECT :unit
  UNION                                   -- not UNION ALL: ends even on a damaged book
  SELECT l.child FROM family f CROSS JOIN link l ON l.mother = f.unit
  LIMIT :most
)
SELECT unit FROM family ORDER BY unit;
