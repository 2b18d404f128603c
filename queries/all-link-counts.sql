-- all-link-counts: how many units came by each link, of those links that there were by a day and that tell it
-- in: as_of
-- out: link, count
-- sort: none
-- link: as in "all-links"
SELECT (child << 32) + (mother << 4) + CASE act
         WHEN 'LAYERED_FROM' THEN 0
         WHEN 'DRAWN_FROM' THEN 8
         WHEN 'STRUCK_FROM' THEN 1
         WHEN 'SCION_OF' THEN 2
         WHEN 'ROOTSTOCK_OF' THEN 3
         WHEN 'SEED_OF' THEN 4
         WHEN 'POLLEN_OF' THEN 5
         WHEN 'DIVIDED_FROM' THEN 6
         WHEN 'SPORT_OF' THEN 7
         WHEN 'SPLIT_FROM' THEN 9
         WHEN 'MERGED_FROM' THEN 10
         WHEN 'ONE_OF' THEN 11
         WHEN 'LAYERED_BELOW' THEN 12
         WHEN 'STRUCK_BELOW' THEN 13
         WHEN 'STOCK_WOOD_OF' THEN 14 END AS link,
       count
FROM link
WHERE day <= :as_of AND count IS NOT NULL
ORDER BY child;
