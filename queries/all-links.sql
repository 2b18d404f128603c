-- all-links: every link that there was by a day, each in one whole number; it was made when its child began
-- in: as_of
-- out: link
-- sort: none: a store hands links over as it comes to them
-- from the right: 4 bits act, 28 bits mother, the rest child; act: 0 layered from, 1 struck from, 2 scion of,
-- 3 rootstock of, 4 seed of, 5 pollen of, 6 divided from, 7 sport of, 8 drawn from, 9 split from, 10 merged from,
-- 11 one of, 12 layered below, 13 struck below, 14 stock wood of
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
         WHEN 'STOCK_WOOD_OF' THEN 14 END AS link
FROM link
WHERE day <= :as_of   -- 2021 and 2021-05 come before 2021-05-01: the same as by their first day
ORDER BY child;
