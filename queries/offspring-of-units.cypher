// offspring-of-units: the links, made by a day, that lead from some units down to what was raised from them
// in: units, as_of
// out: child, mother, act, day, recorded_order, count
// sort: mother, child, then the order of its timeline
// units is a text of numbers with commas between them
UNWIND split($units, ',') AS number
MATCH
  (m:Unit {unit: toInteger(number)})<-[l:LAYERED_FROM|STRUCK_FROM|SCION_OF|ROOTSTOCK_OF|SEED_OF|POLLEN_OF|DIVIDED_FROM
      |SPORT_OF|DRAWN_FROM|SPLIT_FROM|MERGED_FROM|ONE_OF|LAYERED_BELOW|STRUCK_BELOW|STOCK_WOOD_OF]-(c:Unit)
WHERE l.day_first <= $as_of
WITH c, l, m ORDER BY m.unit, c.unit, l.position
RETURN c.unit AS child, m.unit AS mother, type(l) AS act, l.day AS day, l.recorded_order AS recorded_order,
       l.count AS count
