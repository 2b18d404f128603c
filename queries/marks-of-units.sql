-- marks-of-units: which of some units were ever held for plant health, or cleared, crossed-out entries too
-- in: units
-- out: unit
-- sort: unit
-- units is a text of numbers with commas between them
SELECT DISTINCT i.unit
FROM json_each('[' || :units || ']') u
CROSS JOIN involvement i ON i.unit = u.value
CROSS JOIN entry e ON e.recorded_order = i.recorded_order
WHERE e.kind IN ('held', 'cleared')
ORDER BY i.unit;
