-- sizes-in-use: every size class in which something was graded, as first written
-- in: none
-- out: size
-- sort: size
SELECT DISTINCT json_extract(fields, '$.size') AS size
FROM entry
WHERE kind = 'graded'
ORDER BY size;
