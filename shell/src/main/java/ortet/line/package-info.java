/**
 * Answers: what did the user ask for, and how did it end? Splits a line into words, finds the command, binds its
 * words to typed parameters, runs one command, a script or the prompt, and turns failures into lines and an exit
 * status. May depend on {@code ortet.screen}, Spring and JLine; knows no tree.
 */
package ortet.line;
