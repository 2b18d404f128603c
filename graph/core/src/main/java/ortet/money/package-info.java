/**
 * Answers what raising trees costs and what they sell for; depends on {@code ortet.book} and the words in {@code shared}.
 * Every amount is exact: no binary floating point.
 */
package ortet.money;
