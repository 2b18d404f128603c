/**
 * Answers what a number, a day or a fault is, whatever it is used for; depends on nothing.
 */
package ortet.value;
