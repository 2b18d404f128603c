// ancestors: every unit that one comes from, through every kind of link, nearest generations first, up to a number
// in: unit, most
// out: unit
// sort: unit
OPTIONAL MATCH p =
  SHORTEST 1 (:Unit {unit: $unit})-[:LAYERED_FROM|STRUCK_FROM|SCION_OF|ROOTSTOCK_OF|SEED_OF|POLLEN_OF|DIVIDED_FROM
      |SPORT_OF|DRAWN_FROM|SPLIT_FROM|MERGED_FROM|ONE_OF|LAYERED_BELOW|STRUCK_BELOW|STOCK_WOOD_OF]->+(o:Unit)
WITH o.unit AS unit, length(p) AS generation
WHERE unit <> $unit
WITH unit ORDER BY generation, unit
WITH collect(unit) AS others
UNWIND ([$unit] + others)[0..$most] AS unit
RETURN unit
ORDER BY unit
