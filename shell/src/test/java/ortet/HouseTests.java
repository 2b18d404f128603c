package ortet;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.GeneralCodingRules.NO_CLASSES_SHOULD_THROW_GENERIC_EXCEPTIONS;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.io.File;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Import;
import org.springframework.shell.core.command.annotation.Command;

/** Holds the house up: which way the arrows run, and what nobody may touch. */
@AnalyzeClasses(packages = "ortet", importOptions = ImportOption.DoNotIncludeTests.class)
class HouseTests {
    private static final String[] WORDS = {"ortet.plant..", "ortet.entry..", "ortet.value.."};
    private static final String[] QUESTIONS = {
        "ortet.book..",
        "ortet.nursery..",
        "ortet.figures..",
        "ortet.lineage..",
        "ortet.yield..",
        "ortet.timing..",
        "ortet.choice..",
        "ortet.work..",
        "ortet.inventory..",
        "ortet.papers..",
        "ortet.money.."
    };
    private static final String[] STORES = {"ortet.sqlite..", "ortet.neo4j.."};
    private static final String[] SEEDS = {"ortet.seeds.."};
    private static final String[] FACE = {
        "ortet",
        "ortet.line..",
        "ortet.commands..",
        "ortet.screen..",
        "ortet.paper..",
        "ortet.picture..",
        "ortet.pages.."
    };

    /** The fewest classes that each part of the house must show, so that no rule below can pass on nothing. */
    private static final Map<String, Integer> LEAST =
            Map.of("words", 80, "questions", 60, "stores", 8, "seeds", 10, "face", 40);

    @ArchTest
    static void findsEveryPartOfTheHouse(JavaClasses all) {
        Map<String, Integer> found = new TreeMap<>();
        found.put("words", count(all, WORDS));
        found.put("questions", count(all, QUESTIONS));
        found.put("stores", count(all, STORES));
        found.put("seeds", count(all, SEEDS));
        found.put("face", count(all, FACE));
        LEAST.forEach((part, least) ->
                assertTrue(found.get(part) >= least, () -> "only " + found.get(part) + " classes found in " + part));
    }

    @ArchTest
    static void knowsEveryPackage(JavaClasses all) {
        Set<String> strange = new TreeSet<>();
        for (JavaClass one : all) {
            if (!resideInAnyPackage(concat(WORDS, QUESTIONS, STORES, SEEDS, FACE))
                    .test(one)) {
                strange.add(one.getPackageName());
            }
        }
        assertEquals(Set.of(), strange, "packages without a place in the house");
    }

    /** A package stands in one module; the class path would mix them up otherwise. */
    @ArchTest
    static void splitsNoPackage(JavaClasses all) {
        Map<String, Set<String>> places = new TreeMap<>();
        for (JavaClass one : all) {
            String file = one.getName().replace('.', '/') + ".class";
            one.getSource().ifPresent(source -> {
                URI uri = source.getUri();
                places.computeIfAbsent(one.getPackageName(), name -> new TreeSet<>())
                        .add(uri.toString().replace(file, ""));
            });
        }
        places.forEach((name, where) -> assertEquals(1, where.size(), name + " stands in " + where));
    }

    @ArchTest
    static final ArchRule WORDS_DEPEND_ON_NOTHING = classes()
            .that()
            .resideInAnyPackage(WORDS)
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage(concat(WORDS, "java.."));

    @ArchTest
    static final ArchRule QUESTIONS_KNOW_NO_STORE_AND_NO_FACE = noClasses()
            .that()
            .resideInAnyPackage(QUESTIONS)
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(concat(
                    STORES,
                    concat(
                            SEEDS,
                            concat(
                                    FACE,
                                    "java.sql..",
                                    "javax.sql..",
                                    "org.sqlite..",
                                    "org.neo4j..",
                                    "org.jline..",
                                    "org.springframework.."))));

    @ArchTest
    static final ArchRule FIGURES_KNOW_NO_PLANT = noClasses()
            .that()
            .resideInAPackage("ortet.figures..")
            .should()
            .dependOnClassesThat(
                    resideInAPackage("ortet..").and(not(resideInAnyPackage("ortet.figures..", "ortet.value.."))))
            .allowEmptyShould(true);

    @ArchTest
    static final ArchRule THE_BOOK_ASKS_NO_QUESTION_OF_THE_OTHERS = noClasses()
            .that()
            .resideInAPackage("ortet.book..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(
                    "ortet.nursery..",
                    "ortet.figures..",
                    "ortet.lineage..",
                    "ortet.yield..",
                    "ortet.timing..",
                    "ortet.choice..",
                    "ortet.work..",
                    "ortet.inventory..",
                    "ortet.inventory..",
                    "ortet.money..");

    @ArchTest
    static final ArchRule STORES_KNOW_NO_FACE = noClasses()
            .that()
            .resideInAnyPackage(concat(STORES, SEEDS))
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(concat(FACE, "org.springframework..", "org.jline.."))
            .allowEmptyShould(true);

    @ArchTest
    static final ArchRule SEEDS_KNOW_NO_STORE = noClasses()
            .that()
            .resideInAnyPackage(SEEDS)
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(concat(STORES, "java.sql.."))
            .allowEmptyShould(true);

    @ArchTest
    static final ArchRule ONLY_THE_FACE_TOUCHES_SPRING_AND_THE_TERMINAL = noClasses()
            .that()
            .resideOutsideOfPackages(FACE)
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("org.springframework..", "org.jline..");

    @ArchTest
    static final ArchRule ONLY_STORES_SPEAK_SQL_AND_BOLT = noClasses()
            .that()
            .resideOutsideOfPackages(STORES)
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("java.sql..", "javax.sql..", "org.sqlite..", "org.neo4j..");

    @ArchTest
    static final ArchRule THE_SCREEN_KNOWS_NO_COMMAND_AND_NO_TREE = noClasses()
            .that()
            .resideInAPackage("ortet.screen..")
            .should()
            .dependOnClassesThat(resideInAPackage("ortet..").and(not(resideInAPackage("ortet.screen.."))));

    @ArchTest
    static final ArchRule THE_LINE_KNOWS_NO_BOOK = noClasses()
            .that()
            .resideInAPackage("ortet.line..")
            .should()
            .dependOnClassesThat(resideInAPackage("ortet..")
                    .and(not(resideInAnyPackage("ortet.line..", "ortet.screen..", "ortet.value..", "ortet.entry.."))));

    @ArchTest
    static final ArchRule ONLY_MAIN_TOUCHES_THE_STANDARD_STREAMS = noClasses()
            .that()
            .doNotHaveFullyQualifiedName("ortet.Main")
            .and()
            .resideOutsideOfPackage("ortet.seeds") // small programs of their own, not part of the product
            .should()
            .accessField(System.class, "out")
            .orShould()
            .accessField(System.class, "err")
            .orShould()
            .accessField(System.class, "in")
            .orShould()
            .callMethod(System.class, "exit", int.class)
            .orShould()
            .callMethod(Runtime.class, "exit", int.class)
            .orShould()
            .callMethod(Runtime.class, "halt", int.class)
            .orShould()
            .callMethod(Throwable.class, "printStackTrace");

    /** There is one clock, and it is handed in. */
    @ArchTest
    static final ArchRule NOBODY_ASKS_THE_TIME_WITHOUT_A_CLOCK = noClasses()
            .should()
            .callMethod(System.class, "currentTimeMillis")
            .orShould()
            .callMethod(Instant.class, "now")
            .orShould()
            .callMethod(LocalDate.class, "now")
            .orShould()
            .callMethod(LocalDate.class, "now", java.time.ZoneId.class)
            .orShould()
            .callMethod(LocalDateTime.class, "now")
            .orShould()
            .callMethod(ZonedDateTime.class, "now")
            .orShould()
            .callMethod(java.time.Year.class, "now")
            .orShould()
            .callConstructor(java.util.Date.class);

    @ArchTest
    static final ArchRule ONLY_THE_WIRING_MAKES_A_CLOCK = noClasses()
            .that()
            .doNotHaveFullyQualifiedName("ortet.Wiring")
            .should()
            .callMethod(java.time.Clock.class, "systemUTC")
            .orShould()
            .callMethod(java.time.Clock.class, "systemDefaultZone")
            .orShould()
            .callMethod(java.time.Clock.class, "system", java.time.ZoneId.class);

    @ArchTest
    static final ArchRule NOTHING_IS_INJECTED_INTO_FIELDS =
            fields().should().notBeAnnotatedWith(Autowired.class).andShould().notBeAnnotatedWith(Value.class);

    @ArchTest
    static final ArchRule NOTHING_GENERIC_IS_THROWN = NO_CLASSES_SHOULD_THROW_GENERIC_EXCEPTIONS;

    @ArchTest
    static final ArchRule PACKAGES_RUN_IN_NO_CIRCLE =
            slices().matching("ortet.(*)..").should().beFreeOfCycles();

    @ArchTest
    static final ArchRule NO_PACKAGE_IS_A_DRAWER_FOR_ODDMENTS = noClasses()
            .should()
            .resideInAnyPackage("..util..", "..utils..", "..impl..", "..manager..", "..helper..", "..common..");

    /** Every package says which question it answers. */
    @ArchTest
    static void explainsEveryPackage(JavaClasses all) throws IOException {
        Set<String> explained = new TreeSet<>();
        for (String module : List.of("shared", "graph/core", "graph/sqlite", "graph/neo4j", "seeds", "shell")) {
            Path sources = Path.of("..", module, "src", "main", "java");
            if (Files.isDirectory(sources)) {
                try (Stream<Path> files = Files.walk(sources)) {
                    files.filter(file -> file.endsWith("package-info.java"))
                            .map(file -> sources.relativize(file.getParent()).toString())
                            .forEach(folder -> explained.add(folder.replace(File.separatorChar, '.')));
                }
            }
        }
        Set<String> bare = new TreeSet<>();
        all.forEach(one -> bare.add(one.getPackageName()));
        bare.removeAll(explained);
        assertEquals(Set.of(), bare, "packages without package-info.java");
    }

    /** Command classes are imported by name, not searched for; here is where a forgotten one is found. */
    @ArchTest
    static void wiresEveryCommand(JavaClasses all) {
        Set<String> wired = new TreeSet<>();
        for (Class<?> one : Wiring.class.getAnnotation(Import.class).value()) {
            if (!one.isAnnotationPresent(Configuration.class)) {
                wired.add(one.getName());
            }
        }
        Set<String> declared = new TreeSet<>();
        for (JavaClass one : all) {
            if (one.getMethods().stream().anyMatch(method -> method.isAnnotatedWith(Command.class))) {
                declared.add(one.getName());
            }
        }
        assertEquals(declared, wired);
    }

    private static int count(JavaClasses all, String[] packages) {
        return (int) all.stream().filter(resideInAnyPackage(packages)::test).count();
    }

    private static String[] concat(String[] first, String... second) {
        List<String> both = new ArrayList<>(Arrays.asList(first));
        both.addAll(Arrays.asList(second));
        return both.toArray(String[]::new);
    }

    private static String[] concat(String[]... all) {
        return Arrays.stream(all).flatMap(Arrays::stream).toArray(String[]::new);
    }
}
