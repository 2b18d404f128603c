-- entries-like: the entries of days up to one in whose words a pattern of LIKE may be found
-- in: pattern, as_of
-- out: recorded_order
-- sort: recorded_order, the last first
SELECT recorded_order
FROM entry
WHERE fields LIKE :pattern
  AND day_first <= :as_of
  AND (   json_extract(fields, '$.note') LIKE :pattern
       OR json_extract(fields, '$.reason') LIKE :pattern
       OR json_extract(fields, '$.sign') LIKE :pattern
       OR json_extract(fields, '$.sample') LIKE :pattern
       OR json_extract(fields, '$.consignment') LIKE :pattern
       OR json_extract(fields, '$.invoice') LIKE :pattern
       OR json_extract(fields, '$.passport') LIKE :pattern
       OR json_extract(fields, '$.licence') LIKE :pattern
       OR json_extract(fields, '$.branch') LIKE :pattern
       OR json_extract(fields, '$.value') LIKE :pattern)
ORDER BY recorded_order DESC;
