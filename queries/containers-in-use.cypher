// containers-in-use: every container that a unit was put into
// in: none
// out: container
// sort: container
MATCH (p:Potting)
WHERE p.container IS NOT NULL
RETURN DISTINCT p.container AS container
ORDER BY container
