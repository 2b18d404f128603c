// offspring: the links that lead from a unit down to what was raised from it
// in: unit
// out: child, mother, act, day, recorded_order, count
// sort: child, recorded_order, act, position
MATCH (m:Unit {unit: $unit})<-[l:LAYERED_FROM|STRUCK_FROM|SCION_OF|ROOTSTOCK_OF|SEED_OF|POLLEN_OF|DIVIDED_FROM
      |SPORT_OF|DRAWN_FROM|SPLIT_FROM|MERGED_FROM|ONE_OF|LAYERED_BELOW|STRUCK_BELOW|STOCK_WOOD_OF]-(c:Unit)
RETURN c.unit AS child, m.unit AS mother, type(l) AS act, l.day AS day, l.recorded_order AS recorded_order,
       l.count AS count
ORDER BY child, recorded_order, act, l.position
