// places-in-use: every place that a unit stood in
// in: none
// out: place
// sort: place
MATCH (p:Place)
WHERE EXISTS { (:Unit)-[:STOOD_AT]->(p) }
RETURN p.place AS place
ORDER BY place
