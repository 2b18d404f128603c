// entry-by-id: the entry with an identity
// in: id
// out: recorded_order, id, kind, day, by_person, recorded_at, fields
// sort: one row at most
MATCH (e:Entry {id: $id})
RETURN e.recorded_order AS recorded_order, e.id AS id, e.kind AS kind, e.day AS day, e.by_person AS by_person,
       e.recorded_at AS recorded_at, e.fields AS fields
