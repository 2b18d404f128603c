-- last-numbered: of the tags that are a beginning and a number, when case does not matter, the one with the highest
-- in: folded
-- out: tag
-- sort: one row at most
SELECT tag FROM tag
WHERE folded >= :folded || '0' AND folded < :folded || ':'   -- the character after 9
  AND substr(folded, length(:folded) + 1) NOT GLOB '*[^0-9]*'
ORDER BY length(folded) DESC, folded DESC
LIMIT 1;
