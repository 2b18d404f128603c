// involvements-of-unit: every entry that names a unit, crossed-out ones too, amendments not
// in: unit
// out: recorded_order
// sort: recorded_order
MATCH (e:Entry)-[:NAMES]->(:Unit {unit: $unit})
RETURN e.recorded_order AS recorded_order
ORDER BY recorded_order
