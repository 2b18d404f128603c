// tariff: the entries that list costs and prices
// in: none
// out: recorded_order, id, kind, day, by_person, recorded_at, fields
// sort: recorded_order
MATCH (e:Entry)
WHERE e.kind IN ['cost-listed', 'price-listed']
RETURN e.recorded_order AS recorded_order, e.id AS id, e.kind AS kind, e.day AS day, e.by_person AS by_person,
       e.recorded_at AS recorded_at, e.fields AS fields
ORDER BY e.recorded_order
