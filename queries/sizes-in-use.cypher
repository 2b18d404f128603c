// sizes-in-use: every size class in which something was graded, as first written
// in: none
// out: size
// sort: size
MATCH (e:Entry {kind: 'graded'})
RETURN DISTINCT e.size AS size
ORDER BY size
