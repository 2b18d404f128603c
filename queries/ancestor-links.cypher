// ancestor-links: the links between the units that "ancestors" finds
// in: unit, most
// out: child, mother, act, day, recorded_order, count
// sort: child, recorded_order, act, mother
OPTIONAL MATCH p =
  SHORTEST 1 (:Unit {unit: $unit})-[:LAYERED_FROM|STRUCK_FROM|SCION_OF|ROOTSTOCK_OF|SEED_OF|POLLEN_OF|DIVIDED_FROM
      |SPORT_OF|DRAWN_FROM|SPLIT_FROM|MERGED_FROM|ONE_OF|LAYERED_BELOW|STRUCK_BELOW|STOCK_WOOD_OF]->+(o:Unit)
WITH o.unit AS unit, length(p) AS generation
WHERE unit <> $unit
WITH unit ORDER BY generation, unit
WITH collect(unit) AS others
WITH ([$unit] + others)[0..$most] AS family
UNWIND family AS unit
MATCH (c:Unit {unit: unit})-[l:LAYERED_FROM|STRUCK_FROM|SCION_OF|ROOTSTOCK_OF|SEED_OF|POLLEN_OF|DIVIDED_FROM
      |SPORT_OF|DRAWN_FROM|SPLIT_FROM|MERGED_FROM|ONE_OF|LAYERED_BELOW|STRUCK_BELOW|STOCK_WOOD_OF]->(m:Unit)
WHERE m.unit IN family
RETURN c.unit AS child, m.unit AS mother, type(l) AS act, l.day AS day, l.recorded_order AS recorded_order,
       l.count AS count
ORDER BY child, recorded_order, act, mother
