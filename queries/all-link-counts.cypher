// all-link-counts: how many units came by each link, of those links that there were by a day and that tell it
// in: as_of
// out: link, count
// sort: none
// link: as in "all-links"
MATCH (c:Unit)-[l:LAYERED_FROM|STRUCK_FROM|SCION_OF|ROOTSTOCK_OF|SEED_OF|POLLEN_OF|DIVIDED_FROM
      |SPORT_OF|DRAWN_FROM|SPLIT_FROM|MERGED_FROM|ONE_OF|LAYERED_BELOW|STRUCK_BELOW|STOCK_WOOD_OF]->(m:Unit)
WHERE l.day <= $as_of AND l.count IS NOT NULL
RETURN c.unit * 4294967296 + m.unit * 16 + CASE type(l)
         WHEN 'LAYERED_FROM' THEN 0
         WHEN 'STRUCK_FROM' THEN 1
         WHEN 'SCION_OF' THEN 2
         WHEN 'ROOTSTOCK_OF' THEN 3
         WHEN 'SEED_OF' THEN 4
         WHEN 'POLLEN_OF' THEN 5
         WHEN 'DIVIDED_FROM' THEN 6
         WHEN 'SPORT_OF' THEN 7
         WHEN 'DRAWN_FROM' THEN 8
         WHEN 'SPLIT_FROM' THEN 9
         WHEN 'MERGED_FROM' THEN 10
         WHEN 'ONE_OF' THEN 11
         WHEN 'LAYERED_BELOW' THEN 12
         WHEN 'STRUCK_BELOW' THEN 13
         WHEN 'STOCK_WOOD_OF' THEN 14 END AS link,
       l.count AS count
