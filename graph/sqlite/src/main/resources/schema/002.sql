-- 2: what things cost and sell for is found without reading every entry.

CREATE INDEX entry_tariff ON entry (recorded_order)
WHERE kind IN ('cost-listed', 'price-listed');
