// persons: everybody whom entries may name, erased ones too
// in: none
// out: number, name, role, particulars
// sort: number
MATCH (p:Person)
RETURN p.number AS number, p.name AS name, p.role AS role, p.particulars AS particulars
ORDER BY number
