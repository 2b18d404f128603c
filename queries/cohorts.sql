-- cohorts: every cohort that there was on a day, with what had become of it by then
-- in: as_of
-- out: unit, tag, method, day, precision, by_person, count, cultivar, mothers, taken, failed, withdrawn, not_seen,
--      moved_on, found_more, still_on_day, last_seen_day
-- sort: unit
WITH RECURSIVE
-- The cohorts that there were. A tray that was split off has its day of striking, but is there from its splitting only.
there (unit, method) AS MATERIALIZED (
  SELECT c.unit, c.method
  FROM cohort c
  JOIN unit u ON u.unit = c.unit
  WHERE c.day_first <= :as_of AND u.day_first <= :as_of
),
-- What each unit is by its own entries: the last true determination, else the last name that it was said to bear.
named (unit, cultivar, latest) AS MATERIALIZED (
  SELECT unit, cultivar, max(is_true * 1000000 + position)
  FROM naming
  WHERE day_first <= :as_of
  GROUP BY unit
),
-- The cohorts, and up from those without a name of their own whatever they are of the clone of, as far as a name.
kin (unit) AS (
  SELECT unit FROM there
  UNION
  SELECT l.mother
  FROM kin k
  CROSS JOIN link l ON l.child = k.unit
  WHERE l.act IN ('LAYERED_FROM', 'STRUCK_FROM', 'SCION_OF', 'DIVIDED_FROM', 'DRAWN_FROM', 'SPLIT_FROM', 'MERGED_FROM',
                  'ONE_OF')
    AND l.day_first <= :as_of
    AND k.unit NOT IN (SELECT unit FROM named)
),
-- Every name that each of them may bear, handed down from those that have one; '' from those of which nobody knows.
borne (unit, cultivar) AS (
  SELECT k.unit, coalesce(n.cultivar, '')
  FROM kin k
  LEFT JOIN named n ON n.unit = k.unit
  WHERE n.unit IS NOT NULL
     OR NOT EXISTS (
          SELECT 1 FROM link l
          WHERE l.child = k.unit
            AND l.act IN ('LAYERED_FROM', 'STRUCK_FROM', 'SCION_OF', 'DIVIDED_FROM', 'DRAWN_FROM', 'SPLIT_FROM',
                          'MERGED_FROM', 'ONE_OF')
            AND l.day_first <= :as_of)
  UNION
  SELECT l.child, b.cultivar
  FROM borne b
  CROSS JOIN link l ON l.mother = b.unit
  WHERE l.act IN ('LAYERED_FROM', 'STRUCK_FROM', 'SCION_OF', 'DIVIDED_FROM', 'DRAWN_FROM', 'SPLIT_FROM', 'MERGED_FROM',
                  'ONE_OF')
    AND l.day_first <= :as_of
    AND +l.child IN (SELECT unit FROM kin)   -- the + keeps SQLite from walking all of kin for each mother
    AND l.child NOT IN (SELECT unit FROM named)
),
cultivar (unit, cultivar) AS MATERIALIZED (
  SELECT unit, CASE WHEN count(*) = 1 THEN nullif(max(cultivar), '') END
  FROM borne
  GROUP BY unit
),
-- Where the units of a cohort were first set: the unit itself, and those that it was split off or merged from.
origin (unit, origin) AS (
  SELECT unit, unit FROM there
  UNION
  SELECT o.unit, l.mother
  FROM origin o
  CROSS JOIN link l ON l.child = o.origin
  WHERE l.act IN ('SPLIT_FROM', 'MERGED_FROM') AND l.day_first <= :as_of
),
mother (unit, mother, first) AS MATERIALIZED (
  SELECT o.unit, l.mother, min(o.origin * 1000000 + l.position)
  FROM origin o
  CROSS JOIN cohort c ON c.unit = o.unit
  CROSS JOIN link l ON l.child = o.origin
  WHERE l.act = CASE c.method
                  WHEN 'layer' THEN 'LAYERED_FROM'
                  WHEN 'cutting' THEN 'STRUCK_FROM'
                  WHEN 'graft' THEN 'SCION_OF'
                  ELSE 'SEED_OF' END
    AND l.day_first <= :as_of
  GROUP BY o.unit, l.mother
),
mothers (unit, tags) AS MATERIALIZED (
  SELECT m.unit,
         group_concat((SELECT t.tag FROM tag t WHERE t.unit = m.mother AND t.day_first <= :as_of
                       ORDER BY t.position DESC LIMIT 1),
                      ' + ' ORDER BY m.first)
  FROM mother m
  GROUP BY m.unit
),
became (unit, taken, failed, withdrawn, not_seen, moved_on, found_more, still_on_day, last_seen_day) AS MATERIALIZED (
  SELECT unit,
         sum(CASE fate WHEN 'taken' THEN count ELSE 0 END),
         sum(CASE fate WHEN 'failed' THEN count ELSE 0 END),
         sum(CASE fate WHEN 'withdrawn' THEN count ELSE 0 END),
         sum(CASE fate WHEN 'not-seen' THEN count ELSE 0 END),
         sum(CASE fate WHEN 'moved-on' THEN count ELSE 0 END),
         sum(CASE fate WHEN 'found-more' THEN count ELSE 0 END),
         max(CASE fate WHEN 'still-on' THEN day_first END),
         max(CASE WHEN fate <> 'not-seen' THEN day_first END)
  FROM outcome
  WHERE day_first <= :as_of
  GROUP BY unit
)
SELECT c.unit,
       (SELECT t.tag FROM tag t WHERE t.unit = c.unit AND t.day_first <= :as_of
        ORDER BY t.position DESC LIMIT 1) AS tag,
       c.method,
       c.day_first AS day,
       CASE length(c.day) WHEN 10 THEN 'day' WHEN 7 THEN 'month' ELSE 'year' END AS precision,
       c.by_person,
       c.count,
       v.cultivar,
       m.tags AS mothers,
       coalesce(b.taken, 0) AS taken,
       coalesce(b.failed, 0) AS failed,
       coalesce(b.withdrawn, 0) AS withdrawn,
       coalesce(b.not_seen, 0) AS not_seen,
       coalesce(b.moved_on, 0) AS moved_on,
       coalesce(b.found_more, 0) AS found_more,
       b.still_on_day,
       b.last_seen_day
FROM there h
CROSS JOIN cohort c ON c.unit = h.unit
LEFT JOIN cultivar v ON v.unit = c.unit
LEFT JOIN mothers m ON m.unit = c.unit
LEFT JOIN became b ON b.unit = c.unit
ORDER BY c.unit;
