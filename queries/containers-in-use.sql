-- containers-in-use: every container that a unit was put into
-- in: none
-- out: container
-- sort: container
SELECT DISTINCT container FROM potting WHERE container IS NOT NULL ORDER BY container;
