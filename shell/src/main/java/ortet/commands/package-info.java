/**
 * Answers: which commands are there, and what do they show? Each parses, asks and shows; no rule of the trade is here.
 * May depend on {@code ortet.line}, {@code ortet.screen} and the domain.
 */
package ortet.commands;
