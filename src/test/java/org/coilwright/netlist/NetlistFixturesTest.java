package org.coilwright.netlist;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.coilwright.netlist.Reading.Unusable;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * The files under {@code netlists/}: {@code good-} reads and fits the schema; {@code broken-} is
 * refused by both; {@code refused-} fits the schema, and the reader alone sees what is wrong;
 * {@code unread-} is no YAML that a netlist may use. What a person is told stands in {@code
 * *.expected.txt}; {@code -Daccept=true} rewrites those.
 */
class NetlistFixturesTest {
  private static final Path FOLDER = Path.of("src/test/resources/netlists");
  private static final Path EXAMPLES = Path.of("wiring-examples");
  private static final boolean ACCEPT = Boolean.getBoolean("accept");
  private static final JsonSchema SCHEMA =
      JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
          .getSchema(NetlistSchema.text());

  @TestFactory
  Stream<DynamicTest> good_netlists_read_and_fit_the_schema() throws IOException {
    Stream<Path> examples = Files.isDirectory(EXAMPLES) ? yaml(EXAMPLES, "") : Stream.empty();
    return Stream.concat(yaml(FOLDER, "good-"), examples)
        .map(
            file ->
                DynamicTest.dynamicTest(
                    file.getFileName().toString(),
                    () -> {
                      assertEquals("", told(read(file)));
                      assertEquals(Set.of(), objections(file));
                    }));
  }

  @TestFactory
  Stream<DynamicTest> broken_netlists_are_refused_by_reader_and_schema() throws IOException {
    return yaml(FOLDER, "broken-")
        .map(
            file ->
                DynamicTest.dynamicTest(
                    file.getFileName().toString(),
                    () -> {
                      assertTold(file);
                      assertFalse(objections(file).isEmpty(), "the schema lets it pass");
                    }));
  }

  @TestFactory
  Stream<DynamicTest> wrong_references_are_refused_by_the_reader() throws IOException {
    return yaml(FOLDER, "refused-")
        .map(
            file ->
                DynamicTest.dynamicTest(
                    file.getFileName().toString(),
                    () -> {
                      assertTold(file);
                      assertEquals(Set.of(), objections(file));
                    }));
  }

  @TestFactory
  Stream<DynamicTest> files_that_are_no_netlist_are_refused_in_plain_words() throws IOException {
    return yaml(FOLDER, "unread-")
        .map(
            file -> DynamicTest.dynamicTest(file.getFileName().toString(), () -> assertTold(file)));
  }

  @Test
  void there_are_enough_files_and_each_has_its_place() throws IOException {
    assertTrue(yaml(FOLDER, "broken-").count() >= 25);
    assertTrue(yaml(FOLDER, "refused-").count() >= 25);
    try (Stream<Path> files = Files.list(FOLDER)) {
      List<String> orphans =
          files
              .filter(Files::isRegularFile)
              .map(file -> file.getFileName().toString())
              .filter(name -> !name.matches("(good|broken|refused|unread)-[a-z0-9-]+\\.yaml"))
              .filter(
                  name ->
                      !name.endsWith(".expected.txt")
                          || !Files.exists(FOLDER.resolve(name.replace(".expected.txt", ".yaml"))))
              .toList();
      assertEquals(List.of(), orphans);
    }
  }

  @Test
  void what_the_reader_takes_the_schema_takes() throws IOException {
    List<Path> files = yaml(FOLDER, "good-").toList();
    Random random = new Random(42);
    int read = 0;
    for (int i = 0; i < 3_000; i++) {
      Path file = files.get(random.nextInt(files.size()));
      byte[] mutated = Mutation.of(Files.readAllBytes(file), random);
      String name = file.getFileName().toString();
      if (NetlistReader.read(name, mutated, new FolderIncludes(name, file))
          instanceof Reading.Read) {
        String text = new String(mutated, StandardCharsets.UTF_8);
        assertEquals(Set.of(), objections(text), () -> "the reader takes this:\n" + text);
        read++;
      }
    }
    assertTrue(read > 500, "too few are still readable: " + read);
  }

  @Test
  void the_schema_is_the_same_on_every_call() {
    assertEquals(NetlistSchema.text(), NetlistSchema.text());
  }

  private static Stream<Path> yaml(Path folder, String prefix) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(file -> file.getFileName().toString().startsWith(prefix))
          .filter(file -> file.toString().endsWith(".yaml"))
          .sorted()
          .toList()
          .stream();
    }
  }

  private static Reading read(Path file) throws IOException {
    String name = file.getFileName().toString();
    return NetlistReader.read(name, Files.readAllBytes(file), new FolderIncludes(name, file));
  }

  private static Set<String> objections(Path file) throws IOException {
    return objections(Files.readString(file));
  }

  private static Set<String> objections(String text) {
    return SCHEMA.validate(text, InputFormat.YAML).stream()
        .map(ValidationMessage::toString)
        .collect(Collectors.toSet());
  }

  private static void assertTold(Path file) throws IOException {
    Reading reading = read(file);
    assertInstanceOf(Unusable.class, reading);
    Path expected = Path.of(file.toString().replace(".yaml", ".expected.txt"));
    if (ACCEPT) {
      Files.writeString(expected, told(reading));
    }
    assertEquals(Files.readString(expected), told(reading));
  }

  private static String told(Reading reading) {
    return reading instanceof Unusable unusable
        ? unusable.problems().stream()
            .map(NetlistFixturesTest::told)
            .collect(Collectors.joining("\n"))
        : "";
  }

  private static String told(ReadingProblem problem) {
    StringBuilder told = new StringBuilder(problem.file());
    problem.mark().ifPresent(m -> told.append(":" + m.line() + ":" + m.column()));
    told.append("\n  ").append(problem.what()).append('\n');
    problem
        .excerpt()
        .ifPresent(
            line -> {
              told.append("  | ").append(line).append('\n');
              problem
                  .mark()
                  .ifPresent(
                      m ->
                          told.append("  | ")
                              .append(" ".repeat(m.column() - 1))
                              .append("^".repeat(m.endColumn() - m.column()))
                              .append('\n'));
            });
    return told.append("  ").append(problem.remedy()).append('\n').toString();
  }
}
