-- unit-by-tag: the unit that bears or bore a tag
-- in: tag
-- out: unit
-- sort: one row at most
SELECT unit FROM tag WHERE tag = :tag LIMIT 1;
