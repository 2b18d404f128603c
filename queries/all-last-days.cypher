// all-last-days: the last day up to a day on which an entry that names a unit was done, as first written, in whole
// numbers; entries crossed out since are left out
// in: as_of
// out: unit, day
// sort: unit
// day: the first day that it may have been
MATCH (e:Entry)
WHERE e.day <= $as_of AND NOT EXISTS { (:Entry {kind: 'crossed-out'})-[:AMENDS]->(e) }
MATCH (e)-[:NAMES]->(u:Unit)
WITH u.unit AS unit, max(e.day_first) AS last
RETURN unit, duration.inDays(date('1970-01-01'), date(last)).days AS day
ORDER BY unit
