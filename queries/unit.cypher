// unit: what a unit is, which entry began it, and as which of the entry's tags, from 0
// in: unit
// out: unit, nature, position, day, recorded_order
// sort: one row at most
MATCH (u:Unit {unit: $unit})
WHERE u.nature IS NOT NULL
RETURN u.unit AS unit, u.nature AS nature, u.position AS position, u.day AS day, u.recorded_order AS recorded_order
