/**
 * Answers: how does an answer look? Tables for people, CSV and JSON for programs, a bar for long work. May depend on
 * JLine's measure of characters, on FastCSV and Jackson's writer; knows no command and no tree.
 */
package ortet.screen;
