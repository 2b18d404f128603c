-- tags-from: tags in the order of code points when case does not matter, from a text on, up to a number
-- in: folded, most
-- out: tag
-- sort: folded
SELECT max(tag) AS tag FROM tag WHERE folded >= :folded GROUP BY folded ORDER BY folded LIMIT :most;
