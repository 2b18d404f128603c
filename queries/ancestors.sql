-- ancestors: every unit that one comes from, through every kind of link, nearest generations first, up to a number
-- in: unit, most
-- out: unit
-- sort: unit
WITH RECURSIVE family (unit) AS (
  SELECT :unit
  UNION                                   -- not UNION ALL: ends even on a damaged book
  SELECT l.mother FROM family f CROSS JOIN link l ON l.child = f.unit
  LIMIT :most
)
SELECT unit FROM family ORDER BY unit;
