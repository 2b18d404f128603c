-- unit: what a unit is and which entry began it
-- in: unit
-- out: unit, nature, day, recorded_order
-- sort: one row at most
SELECT unit, nature, day, recorded_order FROM unit WHERE unit = :unit;
