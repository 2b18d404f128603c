-- links: every link, from what is raised to what it comes from; a unit that is there by a day has all of its own
-- in: none
-- out: child, act, mother
-- sort: child, then the order of its timeline
SELECT child, act, mother FROM link ORDER BY child, position;
