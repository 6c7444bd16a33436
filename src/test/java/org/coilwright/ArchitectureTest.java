package org.coilwright;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaPackage;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.NullMarked;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Which package may use which, and which alone knows a library. */
class ArchitectureTest {
  private static final String ROOT = "org.coilwright";
  private static final Path SOURCES = Path.of("src/main/java/org/coilwright");

  /** Where the tests lie, whatever the folder is called: they may use anything. */
  private static final String TESTS =
      ArchitectureTest.class.getProtectionDomain().getCodeSource().getLocation().toString();

  private static final ImportOption WITHOUT_TESTS = location -> !location.contains(TESTS);

  private static final JavaClasses CLASSES =
      new ClassFileImporter().withImportOption(WITHOUT_TESTS).importPackages(ROOT);

  /** Package to the packages it may import. A package that is missing here fails the test. */
  private static final Map<String, Set<String>> MAY_IMPORT =
      new TreeMap<>(
          Map.ofEntries(
              Map.entry("quantity", Set.of()),
              Map.entry("netlist", Set.of("quantity")),
              Map.entry("table", Set.of("quantity")),
              Map.entry("circuit", Set.of("quantity", "netlist")),
              Map.entry("solve", Set.of("quantity", "netlist", "table", "circuit")),
              Map.entry(
                  "behaviour",
                  Set.of("quantity", "netlist", "table", "circuit", "solve", "drawing")),
              Map.entry("drawing", Set.of()),
              Map.entry("diagram", Set.of("quantity", "netlist", "circuit", "drawing")),
              Map.entry("sizing", Set.of("quantity", "netlist", "table", "circuit", "solve")),
              Map.entry("rule", Set.of("quantity", "netlist", "table", "circuit", "solve")),
              Map.entry(
                  "rules",
                  Set.of(
                      "quantity",
                      "netlist",
                      "table",
                      "circuit",
                      "solve",
                      "behaviour",
                      "sizing",
                      "rule")),
              Map.entry(
                  "draft",
                  Set.of(
                      "quantity",
                      "netlist",
                      "table",
                      "circuit",
                      "solve",
                      "behaviour",
                      "sizing",
                      "rule")),
              Map.entry(
                  "checklist",
                  Set.of(
                      "quantity",
                      "netlist",
                      "table",
                      "circuit",
                      "solve",
                      "sizing",
                      "rule",
                      "behaviour",
                      "drawing",
                      "diagram")),
              Map.entry("pdf", Set.of("checklist", "drawing")),
              Map.entry(
                  "cli",
                  Set.of(
                      "quantity",
                      "netlist",
                      "table",
                      "circuit",
                      "solve",
                      "behaviour",
                      "sizing",
                      "rule",
                      "rules",
                      "draft",
                      "drawing",
                      "diagram",
                      "checklist",
                      "pdf"))));

  /** Library packages to the packages of the project that alone may know them. */
  private static final Map<String, Set<String>> KNOWN_TO =
      new TreeMap<>(
          Map.of(
              "org.bouncycastle", Set.of("pdf"),
              "com.fasterxml.jackson", Set.of("cli"),
              "org.yaml.snakeyaml", Set.of("netlist", "table"),
              "org.jgrapht", Set.of("circuit"),
              "org.ejml", Set.of("solve"),
              "org.hipparchus", Set.of("solve"),
              "org.apache.pdfbox", Set.of("pdf"),
              "org.apache.fontbox", Set.of("pdf"),
              "org.apache.xmpbox", Set.of("pdf"),
              "picocli", Set.of("cli")));

  @Test
  void every_package_has_its_place_in_the_order() {
    assertEquals(MAY_IMPORT.keySet(), packagesOfTheProject());
  }

  @TestFactory
  Stream<DynamicTest> a_package_imports_only_what_lies_below_it() {
    return MAY_IMPORT.entrySet().stream()
        .map(
            entry ->
                DynamicTest.dynamicTest(
                    entry.getKey(),
                    () -> {
                      String[] forbidden =
                          MAY_IMPORT.keySet().stream()
                              .filter(p -> !p.equals(entry.getKey()))
                              .filter(p -> !entry.getValue().contains(p))
                              .map(ArchitectureTest::within)
                              .toArray(String[]::new);
                      if (forbidden.length > 0) {
                        noClasses()
                            .that()
                            .resideInAPackage(within(entry.getKey()))
                            .should()
                            .dependOnClassesThat()
                            .resideInAnyPackage(forbidden)
                            .check(CLASSES);
                      }
                    }));
  }

  @TestFactory
  Stream<DynamicTest> a_library_is_known_to_its_own_package_only() {
    return KNOWN_TO.entrySet().stream()
        .map(
            entry ->
                DynamicTest.dynamicTest(
                    entry.getKey(),
                    () ->
                        noClasses()
                            .that(resideOutside(entry.getValue()))
                            .should()
                            .dependOnClassesThat()
                            .resideInAPackage(entry.getKey() + "..")
                            .check(CLASSES)));
  }

  @Test
  void rules_are_not_needed_by_what_finds_nothing_without_them() {
    noClasses()
        .that(resideOutside(Set.of("rules", "cli")))
        .should()
        .dependOnClassesThat()
        .resideInAPackage(within("rules"))
        .check(CLASSES);
  }

  @TestFactory
  Stream<DynamicTest> every_package_says_what_it_is_for_and_is_null_marked() {
    return packagesOfTheProject().stream()
        .map(
            name ->
                DynamicTest.dynamicTest(
                    name,
                    () -> {
                      String info =
                          Files.readString(SOURCES.resolve(name).resolve("package-info.java"));
                      assertTrue(info.startsWith("/**"), "purpose missing in " + name);
                      JavaPackage built = CLASSES.getPackage(ROOT + "." + name);
                      assertTrue(built.isAnnotatedWith(NullMarked.class), name);
                    }));
  }

  @Test
  void no_package_or_class_is_named_for_nothing() {
    Set<String> forbidden = Set.of("util", "utils", "common", "helper", "impl", "manager");
    List<String> offenders =
        CLASSES.stream()
            .filter(
                c ->
                    Stream.of(c.getName().split("(?=[A-Z])|[.$]"))
                        .anyMatch(
                            word -> forbidden.contains(word.toLowerCase(java.util.Locale.ROOT))))
            .map(JavaClass::getName)
            .toList();
    assertEquals(List.of(), offenders);
  }

  private static String within(String name) {
    return ROOT + "." + name + "..";
  }

  private static DescribedPredicate<JavaClass> resideOutside(Set<String> packages) {
    return DescribedPredicate.describe(
        "reside outside " + packages,
        c ->
            packages.stream()
                .noneMatch(p -> (c.getPackageName() + ".").startsWith(ROOT + "." + p + ".")));
  }

  private static Set<String> packagesOfTheProject() {
    try (Stream<Path> folders = Files.list(SOURCES)) {
      return folders
          .filter(Files::isDirectory)
          .map(f -> f.getFileName().toString())
          .collect(Collectors.toCollection(TreeSet::new));
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }
}
