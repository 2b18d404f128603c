-- beginnings: the entries, as first written, that began some units, and whether any was amended since
-- in: units
-- out: unit, kind, raised, amended
-- sort: unit
-- raised: how what was acquired is said to have been raised
SELECT u.unit,
       e.kind,
       json_extract(e.fields, '$.raised') AS raised,
       EXISTS (SELECT 1 FROM amendment a WHERE a.target = e.recorded_order) AS amended
FROM json_each('[' || :units || ']') j
CROSS JOIN unit u ON u.unit = j.value
CROSS JOIN entry e ON e.recorded_order = u.recorded_order
ORDER BY u.unit;
