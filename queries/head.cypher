// head: where the book stands
// in: none
// out: id, zone, recorded_order, digest, last_unit
// sort: one row
MATCH (b:Book)
RETURN b.id AS id, b.zone AS zone, b.recorded_order AS recorded_order, b.digest AS digest, b.last_unit AS last_unit
