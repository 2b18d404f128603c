-- unit: what a unit is, which entry began it, and as which of the entry's tags, from 0
-- in: unit
-- out: unit, nature, position, day, recorded_order
-- sort: one row at most
SELECT unit, nature, position, day, recorded_order FROM unit WHERE unit = :unit;
