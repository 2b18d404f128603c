-- involvements-of-units: the entries that name some units, crossed-out ones too
-- in: units
-- out: unit, recorded_order
-- sort: unit, recorded_order
-- units is a text of numbers with commas between them
SELECT i.unit, i.recorded_order
FROM json_each('[' || :units || ']') u
CROSS JOIN involvement i ON i.unit = u.value
ORDER BY i.unit, i.recorded_order;
