// natures-of-units: what some units are and when they began, those begun by a day
// in: units, as_of
// out: unit, nature, day, recorded_order
// sort: unit
// units is a text of numbers with commas between them
UNWIND split($units, ',') AS number
MATCH (u:Unit {unit: toInteger(number)})
WHERE u.day_first <= $as_of
RETURN u.unit AS unit, u.nature AS nature, u.day AS day, u.recorded_order AS recorded_order
ORDER BY unit
