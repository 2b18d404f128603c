// marks-of-units: which of some units were ever held for plant health, or cleared, crossed-out entries too
// in: units
// out: unit
// sort: unit
// units is a text of numbers with commas between them
UNWIND split($units, ',') AS number
MATCH (u:Unit {unit: toInteger(number)})<-[:NAMES]-(e:Entry)
WHERE e.kind IN ['held', 'cleared']
RETURN DISTINCT u.unit AS unit
ORDER BY unit
