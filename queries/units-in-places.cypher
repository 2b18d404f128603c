// units-in-places: every unit that ever stood in one of some places by a day
// in: places, as_of
// out: unit
// sort: unit
// places is a text of names with a line end before, between and after them
MATCH (p:Place)<-[s:STOOD_AT]-(u:Unit)
WHERE $places CONTAINS '\n' + p.place + '\n' AND s.day_first <= $as_of
RETURN DISTINCT u.unit AS unit
ORDER BY unit
