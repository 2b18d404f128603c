-- all-standings: how many units there were after each change up to a day, in whole numbers: the last of a unit counts
-- in: as_of
-- out: unit, pending, growing
-- sort: unit, then the order of its timeline
-- pending is absent where nobody counted
SELECT unit, pending, growing
FROM standing
WHERE day <= :as_of
ORDER BY unit, position;
