// links-of-units: the links of some units, made by a day, to the units that they come from
// in: units, as_of
// out: child, mother, act, day, recorded_order, count
// sort: child, then the order of its timeline
// units is a text of numbers with commas between them
UNWIND split($units, ',') AS number
MATCH
  (c:Unit {unit: toInteger(number)})-[l:LAYERED_FROM|STRUCK_FROM|SCION_OF|ROOTSTOCK_OF|SEED_OF|POLLEN_OF|DIVIDED_FROM
      |SPORT_OF|DRAWN_FROM|SPLIT_FROM|MERGED_FROM|ONE_OF|LAYERED_BELOW|STRUCK_BELOW|STOCK_WOOD_OF]->(m:Unit)
WHERE l.day_first <= $as_of
WITH c, l, m ORDER BY c.unit, l.position
RETURN c.unit AS child, m.unit AS mother, type(l) AS act, l.day AS day, l.recorded_order AS recorded_order,
       l.count AS count
