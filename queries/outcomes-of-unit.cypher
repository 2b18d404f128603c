// outcomes-of-unit: what became of the units of a cohort
// in: unit
// out: fate, count, cause, day, recorded_order
// sort: the order of the unit's timeline
MATCH (:Unit {unit: $unit})-[:CAME_OUT]->(x:Outcome)
RETURN x.fate AS fate, x.count AS count, x.cause AS cause, x.day AS day, x.recorded_order AS recorded_order
ORDER BY x.position
