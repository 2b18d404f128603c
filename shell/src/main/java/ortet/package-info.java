/** Answers: how is the program put together and started? May depend on everything in the house. */
package ortet;
