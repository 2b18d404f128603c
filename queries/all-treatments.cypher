// all-treatments: how each unit was set, struck, worked or sown by a day, in whole numbers; where
// that was amended since it is left out
// in: as_of
// out: unit, treatment, stem
// sort: unit
// treatment: its place in the answer to "treatments-in-use", from 0; stem: of the branch, in hundredths of a millimetre
MATCH (e:Entry)
WHERE e.kind IN ['layer-set', 'cuttings-struck', 'graft-worked', 'seed-sown'] AND NOT EXISTS { (:Entry)-[:AMENDS]->(e) }
WITH coalesce(e.wood, '')
         + '\u001F' + coalesce(e.wound, '')
         + '\u001F' + coalesce(e.hormone, '')
         + '\u001F' + coalesce(e.strength, '')
         + '\u001F' + coalesce(e.carrier, '')
         + '\u001F' + coalesce(e.medium, '')
         + '\u001F' + coalesce(e.wrap, '')
         + '\u001F' + coalesce(e.place, '')
         + '\u001F' + coalesce(e.stock_age_years, '')
         + '\u001F' + coalesce(e.hedged, '') AS treatment, e
ORDER BY treatment
WITH treatment, collect(e) AS entries
WITH collect({entries: entries}) AS treatments
UNWIND range(0, size(treatments) - 1) AS place
UNWIND treatments[place].entries AS e
MATCH (e)-[:NAMES]->(u:Unit)
WHERE u.recorded_order = e.recorded_order AND u.day <= $as_of
WITH u.unit AS unit, place, toInteger(round(toFloat(e.stem_mm) * 100.0)) AS stem
RETURN unit, place AS treatment, stem
ORDER BY unit
