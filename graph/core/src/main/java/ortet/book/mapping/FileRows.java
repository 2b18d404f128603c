package ortet.book.mapping;

import java.util.List;
import ortet.value.Warning;

/**
 * The rows of one file.
 *
 * @param file the file
 * @param rows its rows, in order, without those that are left out or repeat another of a list
 * @param all how many it has below its header
 * @param repeated how many of a list repeat another
 * @param leftOut how many the mapping leaves out
 * @param remarks which columns nobody read
 */
record FileRows(MappedFile file, List<SheetRow> rows, int all, int repeated, int leftOut, List<Warning> remarks) {}
