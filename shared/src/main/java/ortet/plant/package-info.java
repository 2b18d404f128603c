/**
 * Answers what names a plant, a cultivar, a place and a person; depends on {@code ortet.value} alone.
 */
package ortet.plant;
