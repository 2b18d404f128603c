package ortet.line;

import java.io.FileNotFoundException;
import java.io.UncheckedIOException;
import java.nio.channels.ClosedByInterruptException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.util.List;
import java.util.Optional;
import org.springframework.beans.BeansException;
import ortet.screen.Stopped;
import ortet.value.Defect;
import ortet.value.OrtetException;

/**
 * What the user is told when a command did not end well.
 *
 * @param status 1 when it could not be done, 2 when the line was wrong
 * @param lines one line for each fault, none of them with a line break or the program's name
 */
record Failure(int status, List<String> lines) {
    /** Status of what could not be done. */
    static final int COULD_NOT = 1;
    /** Status of a wrong line. */
    static final int WRONG_USAGE = 2;

    /** Keep a copy; at least one line. */
    Failure {
        if (status < 1 || status > 2) {
            throw new IllegalArgumentException("status " + status + "; expected 1 or 2");
        }
        if (lines.isEmpty()) {
            throw new IllegalArgumentException("a failure without a line");
        }
        lines = lines.stream().map(Failure::oneLine).toList();
    }

    /** Return the failure for anything thrown. */
    static Failure of(Throwable thrown) {
        if (thrown instanceof BeansException && thrown.getCause() != null) {
            return of(thrown.getCause());
        }
        if (thrown instanceof Defect) {
            return defect(firstLine(thrown));
        }
        if (thrown instanceof OrtetException told) {
            return new Failure(COULD_NOT, told.lines());
        }
        if (thrown instanceof Stopped) {
            return new Failure(COULD_NOT, List.of(firstLine(thrown)));
        }
        if (thrown instanceof UsageException) {
            return new Failure(WRONG_USAGE, List.of(firstLine(thrown)));
        }
        Throwable cause = thrown instanceof UncheckedIOException wrapped ? wrapped.getCause() : thrown;
        if (cause instanceof FileSystemException file) {
            return new Failure(COULD_NOT, List.of(fileLine(file)));
        }
        if (cause instanceof ClosedByInterruptException) {
            return new Failure(COULD_NOT, List.of("stopped"));
        }
        if (cause instanceof FileNotFoundException) {
            return new Failure(COULD_NOT, List.of(firstLine(cause)));
        }
        if (cause instanceof CharacterCodingException) {
            return new Failure(COULD_NOT, List.of("the text is not UTF-8"));
        }
        if (cause instanceof java.io.IOException) {
            return new Failure(COULD_NOT, List.of(firstLine(cause)));
        }
        if (cause instanceof OutOfMemoryError) {
            return new Failure(COULD_NOT, List.of("not enough memory; set JAVA_TOOL_OPTIONS=-Xmx2g for more"));
        }
        return defect(cause.getClass().getSimpleName() + ": " + firstLine(cause));
    }

    private static Failure defect(String what) {
        return new Failure(COULD_NOT, List.of("a fault in ortet itself: " + what + " (ORTET_TRACE=1 shows where)"));
    }

    private static String fileLine(FileSystemException thrown) {
        String file = String.valueOf(thrown.getFile());
        if (thrown instanceof NoSuchFileException) {
            return "no file " + file;
        }
        if (thrown instanceof AccessDeniedException) {
            return "no permission for " + file;
        }
        if (thrown instanceof FileAlreadyExistsException) {
            return file + " is there already";
        }
        if (thrown instanceof NotDirectoryException) {
            return file + " is not a folder";
        }
        return file + ": " + Optional.ofNullable(thrown.getReason()).orElse("could not be read or written");
    }

    /** Return the first line of an exception's message, or what it is called when it has none. */
    static String firstLine(Throwable thrown) {
        return Optional.ofNullable(thrown.getMessage())
                .map(String::strip)
                .filter(message -> !message.isEmpty())
                .map(Failure::oneLine)
                .orElse(thrown.getClass().getSimpleName());
    }

    private static String oneLine(String text) {
        return text.strip().lines().findFirst().orElse("").strip();
    }
}
