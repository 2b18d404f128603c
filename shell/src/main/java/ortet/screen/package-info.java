/**
 * Answers: how does an answer look? Tables for people, CSV and JSON for programs, a bar for long work, pages for long answers. May
 * depend on JLine's measure of characters and its pager, on FastCSV and Jackson's writer; knows no command and no tree.
 */
package ortet.screen;
