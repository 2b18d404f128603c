-- tags-like: the tags tied on by a day that are like a pattern of LIKE, when case does not matter
-- in: pattern, as_of
-- out: tag, unit
-- sort: length of the tag, then folded
SELECT tag, min(unit) AS unit
FROM tag
WHERE folded LIKE :pattern AND day_first <= :as_of
GROUP BY folded
ORDER BY length(tag), folded;
