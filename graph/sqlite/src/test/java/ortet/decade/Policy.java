package ortet.decade;

import java.util.List;

/** Somebody who decides in February what is done in a year, from what is known by then. */
interface Policy {
    /** Return what is done, at most once for each mother. */
    List<Doing> decide(Records records);
}
