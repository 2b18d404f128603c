-- tag-of-unit: the tag that a unit bore on a day, or its first where it had none yet
-- in: unit, as_of
-- out: tag
-- sort: one row at most
SELECT tag FROM tag WHERE unit = :unit
ORDER BY day_first <= :as_of DESC, CASE WHEN day_first <= :as_of THEN -position ELSE position END LIMIT 1;
