package ortet.book.daybook;

import java.nio.file.Path;
import ortet.book.Head;

/**
 * What was exported.
 *
 * @param folder the folder, which is new
 * @param head where the book stood
 * @param persons how many persons were written
 */
public record Exported(Path folder, Head head, int persons) {}
