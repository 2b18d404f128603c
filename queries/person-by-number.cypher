// person-by-number: the person that a number stands for
// in: number
// out: number, name, role, particulars
// sort: one row at most
MATCH (p:Person {number: $number})
RETURN p.number AS number, p.name AS name, p.role AS role, p.particulars AS particulars
