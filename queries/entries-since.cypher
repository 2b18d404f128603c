// entries-since: every entry after a recorded order, amendments and crossed-out ones too
// in: recorded_order
// out: recorded_order, id, kind, day, by_person, recorded_at, fields, digest
// sort: recorded_order
MATCH (e:Entry)
WHERE e.recorded_order > $recorded_order
RETURN e.recorded_order AS recorded_order, e.id AS id, e.kind AS kind, e.day AS day, e.by_person AS by_person,
       e.recorded_at AS recorded_at, e.fields AS fields, e.digest AS digest
ORDER BY e.recorded_order
