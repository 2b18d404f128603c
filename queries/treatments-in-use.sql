-- treatments-in-use: every way in which units were set, struck, worked or sown by entries that nobody amended
-- in: none
-- out: treatment
-- sort: treatment
-- wood, wound, hormone, strength, carrier, medium, wrap, place, age of the stock plant in years, hedged; each may be
-- empty, the unit separator (U+001F) is between them
SELECT DISTINCT coalesce(json_extract(fields, '$.wood'), '')
         || char(31) || coalesce(json_extract(fields, '$.wound'), '')
         || char(31) || coalesce(json_extract(fields, '$.hormone'), '')
         || char(31) || coalesce(json_extract(fields, '$.strength'), '')
         || char(31) || coalesce(json_extract(fields, '$.carrier'), '')
         || char(31) || coalesce(json_extract(fields, '$.medium'), '')
         || char(31) || coalesce(json_extract(fields, '$.wrap'), '')
         || char(31) || coalesce(json_extract(fields, '$.place'), '')
         || char(31) || coalesce(json_extract(fields, '$.stock_age_years'), '')
         || char(31) || coalesce(json_extract(fields, '$.hedged'), '') AS treatment
FROM entry e
WHERE kind IN ('layer-set', 'cuttings-struck', 'graft-worked', 'seed-sown')
  AND NOT EXISTS (SELECT 1 FROM amendment a WHERE a.target = e.recorded_order)
ORDER BY treatment;
