// cultivars-in-use: every name that a unit was said or found to bear
// in: none
// out: cultivar
// sort: cultivar
MATCH (c:Cultivar)
WHERE EXISTS { (:Unit)-[:NAMED]->(c) }
RETURN c.cultivar AS cultivar
ORDER BY cultivar
