// names: what each unit is by its own entries on a day: the last true determination, else the last name said of it
// in: as_of
// out: unit, cultivar
// sort: unit
MATCH (u:Unit)-[n:NAMED]->(c:Cultivar)
WHERE n.day_first <= $as_of
WITH u.unit AS unit, c.cultivar AS cultivar, n.is_true * 1000000 + n.position AS latest
ORDER BY latest
RETURN unit, last(collect(cultivar)) AS cultivar
ORDER BY unit
