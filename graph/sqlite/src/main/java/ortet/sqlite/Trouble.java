package ortet.sqlite;

import java.nio.file.Path;
import java.sql.SQLException;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;
import ortet.value.Defect;
import ortet.value.OrtetException;
import ortet.value.Unavailable;

/** Tells in one clear line what SQLite says went wrong with a file. */
final class Trouble {
    private static final int PRIMARY = 0xff;

    private Trouble() {}

    /** Tell whether the file itself is damaged. */
    static boolean isDamage(SQLException trouble) {
        int primary = primary(trouble);
        return primary == SQLiteErrorCode.SQLITE_CORRUPT.code
                || primary == SQLiteErrorCode.SQLITE_FORMAT.code
                || primary == SQLiteErrorCode.SQLITE_NOTADB.code;
    }

    /** Tell whether it is the question that cannot be put: it cannot be read, or wants to write. */
    static boolean isOfTheQuestion(SQLException trouble) {
        int primary = primary(trouble);
        return primary == SQLiteErrorCode.SQLITE_ERROR.code
                || primary == SQLiteErrorCode.SQLITE_READONLY.code
                || primary == SQLiteErrorCode.SQLITE_MISMATCH.code
                || primary == SQLiteErrorCode.SQLITE_RANGE.code
                || primary == SQLiteErrorCode.SQLITE_AUTH.code;
    }

    private static int primary(SQLException trouble) {
        return trouble instanceof SQLiteException sqlite ? sqlite.getResultCode().code & PRIMARY : -1;
    }

    /** Return what to throw for trouble with the file. */
    static OrtetException with(Path file, SQLException trouble) {
        int primary = primary(trouble);
        if (primary == SQLiteErrorCode.SQLITE_BUSY.code || primary == SQLiteErrorCode.SQLITE_LOCKED.code) {
            return busy(file, trouble);
        }
        if (primary == SQLiteErrorCode.SQLITE_CORRUPT.code || primary == SQLiteErrorCode.SQLITE_FORMAT.code) {
            return damaged(file, trouble);
        }
        if (primary == SQLiteErrorCode.SQLITE_NOTADB.code) {
            return notABook(file, "it is no SQLite file, or its beginning is damaged", trouble);
        }
        if (primary == SQLiteErrorCode.SQLITE_READONLY.code) {
            return readOnly(file, trouble);
        }
        if (primary == SQLiteErrorCode.SQLITE_CANTOPEN.code || primary == SQLiteErrorCode.SQLITE_PERM.code) {
            return new Unavailable("the book " + file + " cannot be opened; may you read it and its folder?", trouble);
        }
        if (primary == SQLiteErrorCode.SQLITE_FULL.code) {
            return new Unavailable(
                    "no room is left on the disk for the book " + file + "; nothing was written", trouble);
        }
        if (primary == SQLiteErrorCode.SQLITE_IOERR.code) {
            return new Unavailable("the disk fails while the book " + file + " is read or written", trouble);
        }
        if (primary == SQLiteErrorCode.SQLITE_INTERRUPT.code) {
            return new Unavailable("stopped; nothing was written into " + file, trouble);
        }
        return new Defect("the book " + file + ": " + firstLine(trouble), trouble);
    }

    static String firstLine(SQLException trouble) {
        return String.valueOf(trouble.getMessage()).lines().findFirst().orElse("");
    }

    static Unavailable busy(Path file, Throwable cause) {
        return new Unavailable("the book is busy: somebody else is writing into " + file + ", try again", cause);
    }

    static Unavailable damaged(Path file, Throwable cause) {
        return new Unavailable("the book " + file + " is damaged; go back to a backup", cause);
    }

    static Unavailable readOnly(Path file, Throwable cause) {
        return new Unavailable(
                "the book " + file + " can be read but not written: the file or its folder is read-only", cause);
    }

    static Unavailable notABook(Path file, String why, Throwable cause) {
        return new Unavailable(file + " is no book: " + why, cause);
    }
}
