/**
 * Answers what to do next: which stock to grow on for layering wood, how many to set for so many trees by a day, and which
 * trees will come. The programme behind the choice of stock takes plain numbers and gives plain records;
 * {@code ortet.choice.inputs} reads them from the book. Knows no store and no terminal.
 */
package ortet.choice;
