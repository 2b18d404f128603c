-- involvements-of-unit: every entry that names a unit, crossed-out ones too, amendments not
-- in: unit
-- out: recorded_order
-- sort: recorded_order
SELECT recorded_order FROM involvement WHERE unit = :unit ORDER BY recorded_order;
