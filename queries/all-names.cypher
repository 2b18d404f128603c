// all-names: what each unit is by its own entries on a day, in whole numbers: the last true determination, else the
// last name said of it
// in: as_of
// out: unit, cultivar, is_true
// sort: unit
// cultivar: its place in the answer to "cultivars-in-use", from 0; is_true: 1 where it was determined, else 0
MATCH (k:Cultivar)
WHERE EXISTS { (:Unit)-[:NAMED]->(k) }
WITH k.cultivar AS cultivar
ORDER BY cultivar
WITH collect(cultivar) AS words
UNWIND range(0, size(words) - 1) AS place
MATCH (:Cultivar {cultivar: words[place]})<-[x:NAMED]-(u:Unit)
WHERE x.day <= $as_of
WITH u.unit AS unit, place, x
ORDER BY x.is_true, x.position
WITH unit, last(collect([place, x.is_true])) AS name
RETURN unit, name[0] AS cultivar, name[1] AS is_true
ORDER BY unit
