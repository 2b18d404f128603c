-- person-by-folded: the person of a name when case does not matter
-- in: folded
-- out: number, name, role, particulars
-- sort: one row at most
SELECT number, name, role, particulars FROM person WHERE folded = :folded;
