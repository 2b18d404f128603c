-- tag-after: the first tag after a text, in the order of code points, when case does not matter
-- in: folded
-- out: folded, tag
-- sort: one row at most
SELECT folded, tag FROM tag WHERE folded > :folded ORDER BY folded LIMIT 1;
