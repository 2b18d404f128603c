package ortet.sqlite;

import com.fasterxml.jackson.core.JsonFactory;
import java.io.File;
import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.sqlite.JDBC;
import ortet.book.BookStore;
import ortet.book.Diary;
import ortet.value.Defect;

/** Runs a class of these tests in a process of its own. */
final class Child {
    /** A user and a group who own nothing. */
    private static final String NOBODY = "65534";

    private final Path folder;

    /** Use a folder for what the process needs. */
    Child(Path folder) {
        this.folder = folder;
    }

    /** Tell whether this process may write whatever the permissions say. */
    static boolean isSuperuser(Path folder) throws IOException {
        Path file = Files.createTempFile(folder, "who", null);
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("r--r--r--"));
        boolean all = Files.isWritable(file);
        Files.delete(file);
        return all;
    }

    /** Tell whether a process can be run as somebody who owns nothing. */
    static boolean canBeNobody() {
        return Stream.of("/usr/bin/setpriv", "/bin/setpriv").anyMatch(path -> Files.isExecutable(Path.of(path)));
    }

    /** Start the class's main method with the arguments. */
    Process start(boolean asNobody, Class<?> main, String... arguments) throws IOException, URISyntaxException {
        List<String> command = new ArrayList<>();
        if (asNobody) {
            command.addAll(List.of("setpriv", "--reuid=" + NOBODY, "--regid=" + NOBODY, "--clear-groups"));
        }
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(List.of("-Xshare:auto", "-XX:TieredStopAtLevel=1", "-cp", classPath(asNobody), main.getName()));
        command.addAll(List.of(arguments));
        return new ProcessBuilder(command)
                .redirectErrorStream(true)
                .directory(folder.toFile())
                .start();
    }

    /** Wait for a process, and return what it said. */
    static List<String> said(Process process) throws IOException, InterruptedException {
        process.getOutputStream().close();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        if (!process.waitFor(2, TimeUnit.MINUTES) || process.exitValue() != 0) {
            process.destroy();
            throw new AssertionError(said);
        }
        return said.lines().toList();
    }

    private String classPath(boolean copied) throws IOException, URISyntaxException {
        Set<Path> places = new LinkedHashSet<>();
        for (Class<?> type : List.of(
                Defect.class,
                BookStore.class,
                Diary.class,
                SqliteBookStore.class,
                Child.class,
                JDBC.class,
                JsonFactory.class)) {
            places.add(Path.of(
                    type.getProtectionDomain().getCodeSource().getLocation().toURI()));
        }
        List<String> path = new ArrayList<>();
        for (Path place : places) {
            path.add(
                    copied
                            ? copy(
                                    place,
                                    folder.resolve("lib-" + path.size() + (Files.isDirectory(place) ? "" : ".jar")))
                            : place.toString());
        }
        return String.join(File.pathSeparator, path);
    }

    private static String copy(Path from, Path to) throws IOException {
        if (Files.notExists(to)) {
            try (Stream<Path> files = Files.walk(from)) {
                for (Path file : (Iterable<Path>) files::iterator) {
                    Path copy = to.resolve(from.relativize(file).toString());
                    Files.copy(file, copy);
                    Files.setPosixFilePermissions(
                            copy, PosixFilePermissions.fromString(Files.isDirectory(file) ? "rwxr-xr-x" : "rw-r--r--"));
                }
            }
        }
        return to.toString();
    }
}
