-- units-in-places: every unit that ever stood in one of some places by a day
-- in: places, as_of
-- out: unit
-- sort: unit
-- places is a text of names with a line end before, between and after them
SELECT DISTINCT s.unit
FROM stay s
WHERE s.place IN (SELECT DISTINCT place FROM stay WHERE instr(:places, char(10) || place || char(10)) > 0)
  AND s.day_first <= :as_of
ORDER BY s.unit;
