/**
 * Answers whether following the advice pays, over ten years, in nurseries made up at random (docs/methods/decade.md). Keeps
 * real books in files, and asks {@code ortet.choice} as the commands do.
 */
package ortet.decade;
