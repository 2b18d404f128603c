// units-without-place: every unit of which nobody said, when it began or was severed, where it stood
// in: as_of
// out: unit
// sort: unit
MATCH (u:Unit)
WHERE u.day_first <= $as_of AND u.nature <> 'sport'
  AND NOT EXISTS {
        MATCH (u)-[s:STOOD_AT]->(:Place)
        WHERE s.recorded_order = u.recorded_order }
RETURN u.unit AS unit
ORDER BY unit
