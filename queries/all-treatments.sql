-- all-treatments: how each unit was set, struck, worked or sown by a day, in whole numbers; where
-- that was amended since it is left out
-- in: as_of
-- out: unit, treatment, stem
-- sort: unit
-- treatment: its place in the answer to "treatments-in-use", from 0; stem: of the branch, in hundredths of a millimetre
WITH setting (recorded_order, treatment, stem) AS MATERIALIZED (
  SELECT recorded_order,
         coalesce(json_extract(fields, '$.wood'), '')
         || char(31) || coalesce(json_extract(fields, '$.wound'), '')
         || char(31) || coalesce(json_extract(fields, '$.hormone'), '')
         || char(31) || coalesce(json_extract(fields, '$.strength'), '')
         || char(31) || coalesce(json_extract(fields, '$.carrier'), '')
         || char(31) || coalesce(json_extract(fields, '$.medium'), '')
         || char(31) || coalesce(json_extract(fields, '$.wrap'), '')
         || char(31) || coalesce(json_extract(fields, '$.place'), '')
         || char(31) || coalesce(json_extract(fields, '$.stock_age_years'), '')
         || char(31) || coalesce(json_extract(fields, '$.hedged'), ''),
         CAST(round(json_extract(fields, '$.stem_mm') * 100.0) AS INTEGER)
  FROM entry e
  WHERE kind IN ('layer-set', 'cuttings-struck', 'graft-worked', 'seed-sown')
    AND NOT EXISTS (SELECT 1 FROM amendment a WHERE a.target = e.recorded_order)
),
word (treatment, place) AS MATERIALIZED (
  SELECT treatment, row_number() OVER (ORDER BY treatment) - 1
  FROM (SELECT DISTINCT treatment FROM setting)
),
placed (recorded_order, place, stem) AS MATERIALIZED (
  SELECT s.recorded_order, w.place, s.stem
  FROM setting s
  JOIN word w ON w.treatment = s.treatment
)
SELECT u.unit, p.place AS treatment, p.stem
FROM unit u
CROSS JOIN placed p ON p.recorded_order = u.recorded_order
WHERE u.day <= :as_of
ORDER BY u.unit;
