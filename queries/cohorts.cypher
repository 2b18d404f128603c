// cohorts: every cohort that there was on a day, with what had become of it by then
// in: as_of
// out: unit, tag, method, day, precision, by_person, count, cultivar, mothers, taken, failed, withdrawn, not_seen,
//      moved_on, found_more, still_on_day, last_seen_day
// sort: unit
// The cohorts that there were. A tray that was split off has its day of striking, but is there from its splitting only.
MATCH (c:Unit)
WHERE c.set_day_first <= $as_of AND c.day_first <= $as_of
// Up from those without a name of their own through whatever they are of the clone of, as far as a name; empty where
// nobody knows.
CALL (c) {
  MATCH SHORTEST 1
    (c) ((a:Unit)-[l:LAYERED_FROM|STRUCK_FROM|SCION_OF|DIVIDED_FROM|DRAWN_FROM|SPLIT_FROM|MERGED_FROM|ONE_OF]->(:Unit)
         WHERE l.day_first <= $as_of AND (a.first_named IS NULL OR a.first_named > $as_of))* (n:Unit)
  WHERE n.first_named <= $as_of
     OR NOT EXISTS {
          MATCH (n)-[k:LAYERED_FROM|STRUCK_FROM|SCION_OF|DIVIDED_FROM|DRAWN_FROM|SPLIT_FROM|MERGED_FROM|ONE_OF]->(:Unit)
          WHERE k.day_first <= $as_of }
  WITH DISTINCT coalesce(
         head(COLLECT { MATCH (n)-[x:NAMED]->(k:Cultivar) WHERE x.day_first <= $as_of
                        RETURN k.cultivar ORDER BY x.is_true DESC, x.position DESC LIMIT 1 }), '') AS name
  WITH collect(name) AS borne
  RETURN CASE WHEN size(borne) = 1 AND borne[0] <> '' THEN borne[0] END AS cultivar
}
// Where the units of a cohort were first set: the unit itself, and those that it was split off or merged from.
CALL (c) {
  MATCH SHORTEST 1
    (c) ((:Unit)-[l:SPLIT_FROM|MERGED_FROM]->(:Unit) WHERE l.day_first <= $as_of)* (o:Unit)
  MATCH (o)-[k:LAYERED_FROM|STRUCK_FROM|SCION_OF|SEED_OF]->(m:Unit)
  WHERE type(k) = CASE c.method
                    WHEN 'layer' THEN 'LAYERED_FROM'
                    WHEN 'cutting' THEN 'STRUCK_FROM'
                    WHEN 'graft' THEN 'SCION_OF'
                    ELSE 'SEED_OF' END
    AND k.day_first <= $as_of
  WITH m, min(o.unit * 1000000 + k.position) AS first
  ORDER BY first
  WITH head(COLLECT { MATCH (m)-[:BEARS]->(t:Tag) WHERE t.day_first <= $as_of
                      RETURN t.tag ORDER BY t.position DESC LIMIT 1 }) AS tag
  WITH collect(tag) AS tags
  RETURN CASE WHEN tags <> [] THEN reduce(all = head(tags), tag IN tail(tags) | all + ' + ' + tag) END AS mothers
}
CALL (c) {
  OPTIONAL MATCH (c)-[:CAME_OUT]->(x:Outcome)
  WHERE x.day_first <= $as_of
  RETURN sum(CASE x.fate WHEN 'taken' THEN x.count ELSE 0 END) AS taken,
         sum(CASE x.fate WHEN 'failed' THEN x.count ELSE 0 END) AS failed,
         sum(CASE x.fate WHEN 'withdrawn' THEN x.count ELSE 0 END) AS withdrawn,
         sum(CASE x.fate WHEN 'not-seen' THEN x.count ELSE 0 END) AS not_seen,
         sum(CASE x.fate WHEN 'moved-on' THEN x.count ELSE 0 END) AS moved_on,
         sum(CASE x.fate WHEN 'found-more' THEN x.count ELSE 0 END) AS found_more,
         max(CASE x.fate WHEN 'still-on' THEN x.day_first END) AS still_on_day,
         max(CASE WHEN x.fate <> 'not-seen' THEN x.day_first END) AS last_seen_day
}
RETURN c.unit AS unit,
       head(COLLECT { MATCH (c)-[:BEARS]->(t:Tag) WHERE t.day_first <= $as_of
                      RETURN t.tag ORDER BY t.position DESC LIMIT 1 }) AS tag,
       c.method AS method,
       c.set_day_first AS day,
       CASE size(c.set_day) WHEN 10 THEN 'day' WHEN 7 THEN 'month' ELSE 'year' END AS precision,
       c.by_person AS by_person,
       c.count AS count,
       cultivar,
       mothers,
       taken,
       failed,
       withdrawn,
       not_seen,
       moved_on,
       found_more,
       still_on_day,
       last_seen_day
ORDER BY unit
