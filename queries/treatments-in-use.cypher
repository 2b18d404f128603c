// treatments-in-use: every way in which units were set, struck, worked or sown by entries that nobody amended
// in: none
// out: treatment
// sort: treatment
// wood, wound, hormone, strength, carrier, medium, wrap, place, age of the stock plant in years, hedged; each may be
// empty, the unit separator (U+001F) is between them
MATCH (e:Entry)
WHERE e.kind IN ['layer-set', 'cuttings-struck', 'graft-worked', 'seed-sown'] AND NOT EXISTS { (:Entry)-[:AMENDS]->(e) }
RETURN DISTINCT coalesce(e.wood, '')
         + '\u001F' + coalesce(e.wound, '')
         + '\u001F' + coalesce(e.hormone, '')
         + '\u001F' + coalesce(e.strength, '')
         + '\u001F' + coalesce(e.carrier, '')
         + '\u001F' + coalesce(e.medium, '')
         + '\u001F' + coalesce(e.wrap, '')
         + '\u001F' + coalesce(e.place, '')
         + '\u001F' + coalesce(e.stock_age_years, '')
         + '\u001F' + coalesce(e.hedged, '') AS treatment
ORDER BY treatment
