-- tag-by-folded: the tag that is this text when case does not matter
-- in: folded
-- out: tag, unit
-- sort: one row at most
SELECT tag, unit FROM tag WHERE folded = :folded LIMIT 1;
