-- 3: plans are found without reading every entry.

CREATE INDEX entry_plan ON entry (recorded_order)
WHERE kind = 'planned';
