// all-standings: how many units there were after each change up to a day, in whole numbers: the last of a unit counts
// in: as_of
// out: unit, pending, growing
// sort: unit, then the order of its timeline
// pending is absent where nobody counted
MATCH (x:Standing)
WHERE x.day <= $as_of
WITH x ORDER BY x.unit, x.position
RETURN x.unit AS unit, x.pending AS pending, x.growing AS growing
