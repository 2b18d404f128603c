-- all-link-counts: how many units came by each link, of those links that there were by a day and that tell it
-- in: as_of
-- out: place, count
-- sort: place
-- place: which of the links of "all-links" it is, from 0
SELECT place, count
FROM (SELECT row_number() OVER (ORDER BY child, position) - 1 AS place, count FROM link WHERE day <= :as_of)
WHERE count IS NOT NULL
ORDER BY place;
