// links-of-unit: the units that a unit comes from
// in: unit
// out: child, mother, act, day, recorded_order, count
// sort: the order of the unit's timeline
MATCH (c:Unit {unit: $unit})-[l:LAYERED_FROM|STRUCK_FROM|SCION_OF|ROOTSTOCK_OF|SEED_OF|POLLEN_OF|DIVIDED_FROM
      |SPORT_OF|DRAWN_FROM|SPLIT_FROM|MERGED_FROM|ONE_OF|LAYERED_BELOW|STRUCK_BELOW|STOCK_WOOD_OF]->(m:Unit)
RETURN c.unit AS child, m.unit AS mother, type(l) AS act, l.day AS day, l.recorded_order AS recorded_order,
       l.count AS count
ORDER BY l.position
