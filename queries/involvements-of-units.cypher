// involvements-of-units: the entries that name some units, crossed-out ones too
// in: units
// out: unit, recorded_order
// sort: unit, recorded_order
// units is a text of numbers with commas between them
UNWIND split($units, ',') AS number
MATCH (u:Unit {unit: toInteger(number)})<-[:NAMES]-(e:Entry)
RETURN u.unit AS unit, e.recorded_order AS recorded_order
ORDER BY unit, recorded_order
