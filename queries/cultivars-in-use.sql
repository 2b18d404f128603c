-- cultivars-in-use: every name that a unit was said or found to bear
-- in: none
-- out: cultivar
-- sort: cultivar
SELECT DISTINCT cultivar FROM naming ORDER BY cultivar;
