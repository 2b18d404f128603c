/**
 * Answers what to do next year: which stock, how many to set, and what trees will come. Knows no store and no terminal.
 */
package ortet.choice;
