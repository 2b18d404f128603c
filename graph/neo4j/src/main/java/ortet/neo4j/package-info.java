/**
 * Keeps a book on a Neo4j server, for several offices at once: one more store behind the port of {@code ortet.book};
 * depends on that and on the Neo4j driver, and knows no rule of the trade.
 */
package ortet.neo4j;
