// links: every link, from what is raised to what it comes from; a unit that is there by a day has all of its own
// in: none
// out: child, act, mother
// sort: child, then the order of its timeline
MATCH (c:Unit)-[l:LAYERED_FROM|STRUCK_FROM|SCION_OF|ROOTSTOCK_OF|SEED_OF|POLLEN_OF|DIVIDED_FROM
      |SPORT_OF|DRAWN_FROM|SPLIT_FROM|MERGED_FROM|ONE_OF|LAYERED_BELOW|STRUCK_BELOW|STOCK_WOOD_OF]->(m:Unit)
RETURN c.unit AS child, type(l) AS act, m.unit AS mother
ORDER BY child, l.position
