// arrivals: the entries that begin units by something else than an act on another unit, but for its seed or pollen
// in: none
// out: recorded_order
// sort: recorded_order
MATCH (u:Unit)
WHERE NOT EXISTS {
        MATCH (u)-[l]->(:Unit)
        WHERE NOT type(l) IN ['SEED_OF', 'POLLEN_OF'] }
RETURN DISTINCT u.recorded_order AS recorded_order
ORDER BY recorded_order
