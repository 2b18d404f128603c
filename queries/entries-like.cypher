// entries-like: the entries of days up to one in whose words a pattern of LIKE may be found
// in: pattern, as_of
// out: recorded_order
// sort: recorded_order, the last first
// A pattern of LIKE, with % and _, as a regular expression; case does not matter for the letters a to z.
WITH '(?is)\\Q' + replace(replace(replace($pattern, '\\E', '\\E\\\\E\\Q'), '%', '\\E.*\\Q'), '_', '\\E.\\Q')
     + '\\E' AS like
MATCH (e:Entry)
WHERE e.day_first <= $as_of
  AND e.fields =~ like
  AND any(text IN [e.note, e.reason, e.sign, e.sample, e.consignment, e.invoice, e.passport, e.licence, e.branch,
                   e.value] WHERE text =~ like)
RETURN e.recorded_order AS recorded_order
ORDER BY recorded_order DESC
