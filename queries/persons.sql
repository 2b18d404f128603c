-- persons: everybody whom entries may name, erased ones too
-- in: none
-- out: number, name, role, particulars
-- sort: number
SELECT number, name, role, particulars FROM person ORDER BY number;
