// person-by-folded: the person of a name when case does not matter
// in: folded
// out: number, name, role, particulars
// sort: one row at most
MATCH (p:Person {folded: $folded})
RETURN p.number AS number, p.name AS name, p.role AS role, p.particulars AS particulars
