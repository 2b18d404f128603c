package ortet;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Starts the real {@code ./ortet} from a copy of the start script and the packaged jar, as a user's folder would have
 * them. Runs after packaging.
 */
@Timeout(value = 5, unit = TimeUnit.MINUTES)
class StartProcessTests {
    private static final Path SCRIPT = Path.of(System.getProperty("ortet.start.script"));

    @TempDir
    static Path folder;

    private static Path ortet;

    @BeforeAll
    static void copy() throws IOException {
        ortet = house(folder.resolve("a nursery's folder"));
        assertEquals(0, run(Map.of(), "", "version").status());
    }

    private static Path house(Path where) throws IOException {
        Path target = Files.createDirectories(where.resolve("shell/target"));
        Files.copy(SCRIPT.resolveSibling("shell/target/ortet.jar"), target.resolve("ortet.jar"));
        return Files.copy(SCRIPT, where.resolve("ortet"), StandardCopyOption.COPY_ATTRIBUTES);
    }

    private record Ended(int status, String out, String err) {}

    private static Ended run(Map<String, String> environment, String input, String... arguments) {
        List<String> command = new ArrayList<>(List.of(ortet.toString()));
        command.addAll(List.of(arguments));
        return start(environment, input, command);
    }

    private static Ended start(Map<String, String> environment, String input, List<String> command) {
        try {
            Path in = Files.writeString(Files.createTempFile(folder, "in", ""), input);
            Path out = Files.createTempFile(folder, "out", "");
            Path err = Files.createTempFile(folder, "err", "");
            ProcessBuilder builder = new ProcessBuilder(command)
                    .redirectInput(in.toFile())
                    .redirectOutput(out.toFile())
                    .redirectError(err.toFile());
            builder.environment().remove("JAVA_TOOL_OPTIONS");
            builder.environment().putAll(environment);
            int status = builder.start().waitFor();
            return new Ended(status, Files.readString(out), Files.readString(err));
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    private static Ended shell(String line) {
        return start(Map.of("ORTET", ortet.toString()), "", List.of("sh", "-c", line));
    }

    @Test
    void endsWithZeroOneOrTwo() {
        assertEquals(0, run(Map.of(), "", "version").status());
        assertEquals(1, run(Map.of(), "", "@nowhere").status());
        assertEquals(2, run(Map.of(), "", "versoin").status());
    }

    @Test
    void tellsAWrongLineInOneLineOnTheErrorStreamAlone() {
        Ended ended = run(Map.of(), "", "versoin");
        assertEquals("", ended.out());
        assertEquals("ortet: no command \"versoin\"; nearest: version\n", ended.err());
    }

    @Test
    void keepsWordsAsTheShellHandsThemOver() {
        assertEquals(
                "ortet: no command \"two  words\"; \"help\" lists them\n",
                run(Map.of(), "", "two  words").err());
        assertEquals(
                "ortet: no command \"楓 é*\"; \"help\" lists them\n",
                run(Map.of("LC_ALL", "C.UTF-8"), "", "楓 é*").err());
    }

    @Test
    void takesStandardInputForAScriptWhenItIsNoTerminal() {
        Ended ended = run(Map.of(), "version\nversoin\nversion\n");
        assertTrue(ended.out().matches("ortet [^\n]+\n"), ended.out());
        assertEquals("""
                ortet: standard input:2: no command "versoin"; nearest: version
                ortet: standard input: stopped at line 2; 1 command was done before it, none after
                """, ended.err());
        assertEquals(2, ended.status());
    }

    @Test
    void endsQuietlyWhenTheReaderGoesAway() {
        Ended ended = shell("yes help | head -n 2000 | \"$ORTET\" - | head -n 1");
        assertEquals("", ended.err());
        assertEquals(1, ended.out().lines().count());
    }

    @Test
    void saysWhenTheAnswerCouldNotBeWritten() {
        assumeTrue(Files.exists(Path.of("/dev/full")), "no /dev/full here");
        Ended ended = shell("\"$ORTET\" version >/dev/full");
        assertEquals(1, ended.status());
        assertTrue(ended.err().startsWith("ortet: the answer could not be written: "), ended.err());
    }

    @Test
    void writesUtf8WhateverTheLocale() {
        assertTrue(run(Map.of("LC_ALL", "C"), "", "help").out().contains("COMMAND …"));
    }

    @Test
    void keepsAnUnpackedCopyWithAnArchive() throws IOException {
        try (Stream<Path> kept = Files.walk(ortet.resolveSibling("shell/target/start"))) {
            assertEquals(1, kept.filter(file -> file.endsWith("classes")).count());
        }
    }

    @Test
    void worksThroughASymbolicLinkFromElsewhere() throws IOException {
        Path link = Files.createSymbolicLink(folder.resolve("link"), Path.of("a nursery's folder", "ortet"));
        assertEquals(0, start(Map.of(), "", List.of(link.toString(), "version")).status());
    }

    @Test
    void survivesTwoFirstStartsAtOnceAndLeavesNoLock() throws Exception {
        Path other = house(folder.resolve("twins"));
        Process first = new ProcessBuilder(other.toString(), "version").start();
        Process second = new ProcessBuilder(other.toString(), "version").start();
        assertEquals(0, first.waitFor());
        assertEquals(0, second.waitFor());
        for (Process one : List.of(first, second)) {
            assertTrue(new String(one.getInputStream().readAllBytes(), UTF_8).matches("ortet [^\n]+\n"));
            assertEquals("", new String(one.getErrorStream().readAllBytes(), UTF_8));
        }
        try (Stream<Path> left = Files.list(other.resolveSibling("shell/target/start"))) {
            List<String> names =
                    left.map(file -> file.getFileName().toString()).sorted().toList();
            assertEquals(2, names.size(), names::toString);
            assertTrue(names.get(1).startsWith(names.get(0)), names::toString);
        }
    }

    @Test
    void takesOverFromAPreparationThatDied() throws Exception {
        Path other = house(folder.resolve("died"));
        assertEquals(
                0, start(Map.of(), "", List.of(other.toString(), "version")).status());
        Path start = other.resolveSibling("shell/target/start");
        String key;
        try (Stream<Path> files = Files.list(start)) {
            key = files.filter(Files::isRegularFile)
                    .map(file -> file.getFileName().toString())
                    .findFirst()
                    .orElseThrow();
        }
        Files.delete(start.resolve(key));
        Process gone = new ProcessBuilder("true").start();
        gone.waitFor();
        Files.writeString(Files.createDirectories(start.resolve(key + ".lock")).resolve("pid"), gone.pid() + "\n");
        assertEquals(
                0, start(Map.of(), "", List.of(other.toString(), "version")).status());
        assertTrue(Files.exists(start.resolve(key)));
        assertFalse(Files.exists(start.resolve(key + ".lock")));
    }

    @Test
    void preparesAnewForAnotherJarAndKeepsTheLastFew() throws Exception {
        Path other = house(folder.resolve("rebuilt"));
        Path jar = other.resolveSibling("shell/target/ortet.jar");
        for (int build = 0; build < 5; build++) {
            Path next = Files.copy(jar, jar.resolveSibling("next.jar"));
            Files.move(next, jar, StandardCopyOption.REPLACE_EXISTING);
            assertEquals(
                    0, start(Map.of(), "", List.of(other.toString(), "version")).status());
        }
        try (Stream<Path> left = Files.list(other.resolveSibling("shell/target/start"))) {
            Map<Boolean, Long> kept = new TreeMap<>();
            left.forEach(file -> kept.merge(Files.isDirectory(file, LinkOption.NOFOLLOW_LINKS), 1L, Long::sum));
            assertEquals(Map.of(false, 3L, true, 3L), kept);
        }
    }

    @Test
    void worksWhereItCannotWrite() throws Exception {
        Path other = house(folder.resolve("locked"));
        Path target = other.resolveSibling("shell/target");
        // A file in the way is what even root cannot make a folder of.
        Files.writeString(target.resolve("start"), "");
        Path cache = folder.resolve("cache");
        Ended ended = start(Map.of("XDG_CACHE_HOME", cache.toString()), "", List.of(other.toString(), "version"));
        assertEquals("", ended.err());
        assertEquals(0, ended.status());
        assertTrue(Files.isDirectory(cache.resolve("ortet")));
        Files.writeString(folder.resolve("nocache"), "");
        ended = start(
                Map.of("XDG_CACHE_HOME", folder.resolve("nocache").toString()),
                "",
                List.of(other.toString(), "version"));
        assertEquals("", ended.err());
        assertEquals(0, ended.status());
    }

    @Test
    void saysWhenThereIsNoJavaOrAnOldOne() throws IOException {
        Ended none = run(Map.of("JAVA_HOME", "/nowhere"), "", "version");
        assertEquals("ortet: JAVA_HOME is /nowhere, but there is no bin/java in it\n", none.err());
        assertEquals(1, none.status());
        Path old = Files.createDirectories(folder.resolve("jdk8/bin"));
        Path java = Files.writeString(old.resolve("java"), "#!/bin/sh\nexit 1\n");
        assertTrue(java.toFile().setExecutable(true));
        Files.writeString(folder.resolve("jdk8/release"), "JAVA_VERSION=\"1.8.0_402\"\n");
        Ended ended = run(Map.of("JAVA_HOME", folder.resolve("jdk8").toString()), "", "version");
        assertEquals("ortet: this is Java 1.8.0_402; ortet needs 17 or later (set JAVA_HOME)\n", ended.err());
        assertEquals(1, ended.status());
    }

    @Test
    void saysWhenItIsNotBuiltAndThereIsNoMaven() throws IOException {
        Path bare = Files.createDirectories(folder.resolve("bare/shell")).resolveSibling("ortet");
        Files.copy(SCRIPT, bare, StandardCopyOption.COPY_ATTRIBUTES);
        Path tools = Files.createDirectories(folder.resolve("tools"));
        for (String tool : List.of("mkdir", "rm", "sleep", "stat", "cksum", "readlink")) {
            Path wrapper =
                    Files.writeString(tools.resolve(tool), "#!/bin/sh\nPATH=/usr/bin:/bin exec " + tool + " \"$@\"\n");
            assertTrue(wrapper.toFile().setExecutable(true));
        }
        Ended ended = start(
                Map.of("PATH", tools.toString(), "JAVA_HOME", System.getProperty("java.home")),
                "",
                List.of(bare.toString(), "version"));
        assertEquals("ortet: not built yet, and no mvn found; install Maven 3.8 or later\n", ended.err());
        assertEquals(1, ended.status());
        assertFalse(Files.exists(bare.resolveSibling("shell/.building")));
    }
}
