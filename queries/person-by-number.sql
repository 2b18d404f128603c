-- person-by-number: the person that a number stands for
-- in: number
-- out: number, name, role, particulars
-- sort: one row at most
SELECT number, name, role, particulars FROM person WHERE number = :number;
