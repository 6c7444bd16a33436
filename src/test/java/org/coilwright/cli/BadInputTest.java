package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.coilwright.cli.Cli.Ran;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What no circuit can be made of ends with 2, a place and a remedy, never with a trace. */
class BadInputTest {
  private static final Path GOOD = Path.of("wiring-examples/wash-room-tub.yaml");

  @TempDir Path folder;

  static Stream<Arguments> withoutPlace() throws IOException {
    byte[] noise = new byte[4096];
    new Random(1).nextBytes(noise);
    byte[] big = "# filler\n".repeat(10 * 1024 * 1024 / 9).getBytes(StandardCharsets.UTF_8);
    return Stream.of(
        Arguments.of("empty", new byte[0]),
        Arguments.of("binary", noise),
        Arguments.of("zeros", new byte[100_000]),
        Arguments.of("ten megabytes", big),
        Arguments.of("comments only", "# nothing\n".getBytes(StandardCharsets.UTF_8)),
        Arguments.of("utf-16", good().getBytes(StandardCharsets.UTF_16)));
  }

  static Stream<Arguments> withPlace() throws IOException {
    String good = good();
    String bomb = "a: &a [x, x, x, x, x, x, x, x, x]\n";
    for (char c = 'b'; c < 'k'; c++) {
      String last = "*" + (char) (c - 1);
      bomb +=
          c + ": &" + c + " [" + String.join(", ", List.of(last, last, last, last, last)) + "]\n";
    }
    return Stream.of(
        Arguments.of("deep nesting", "a: " + "[".repeat(50_000)),
        Arguments.of("deep flow maps", "a: " + "{b: ".repeat(20_000)),
        Arguments.of("alias bomb", bomb),
        Arguments.of("endless alias", "a: &a [*a]\n" + good),
        Arguments.of("duplicate key", good.replace("  F1:", "  F0:")),
        Arguments.of("unknown key", good.replace("altitude:", "altitud:")),
        Arguments.of("unknown kind", good.replace("is: thermostat", "is: thermostate")),
        Arguments.of("unknown pin", good.replace("K1.A2", "K1.A3")),
        Arguments.of("unknown part", good.replace("K1.A2", "K7.A2")),
        Arguments.of("unknown run", good.replace("in W1", "in W8")),
        Arguments.of("wrong unit", good.replace("altitude: 310 m", "altitude: 310 kW")),
        Arguments.of("no unit", good.replace("altitude: 310 m", "altitude: 310")),
        Arguments.of("infinite", good.replace("altitude: 310 m", "altitude: 1e999 m")),
        Arguments.of("a tag", good.replace("title: ", "title: !!java.net.URL ")),
        Arguments.of("a tab", good.replace("  title", "\ttitle")),
        Arguments.of("two documents", good + "\n---\ncoilwright: 1\n"),
        Arguments.of("a control character", good.replace("Soaking", "So\u0001aking")),
        Arguments.of("a list at the top", "- 1\n- 2\n"),
        Arguments.of("a format of the future", good.replace("coilwright: 1", "coilwright: 2")));
  }

  private static String good() throws IOException {
    return Files.readString(GOOD);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("withoutPlace")
  void whole_file_is_no_netlist(String name, byte[] bytes) throws IOException {
    refused(bytes);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("withPlace")
  void one_place_is_wrong(String name, String text) throws IOException {
    assertFalse(text.equals(good()), "nothing was broken");
    Ran ran = refused(text.getBytes(StandardCharsets.UTF_8));
    assertTrue(ran.err().contains(", line "), ran.err());
    assertTrue(ran.err().contains(", column "), ran.err());
    // A line that no terminal should be sent is named, not shown.
    assertEquals(!name.equals("a control character"), ran.err().contains("^"), ran.err());
  }

  private Ran refused(byte[] bytes) throws IOException {
    Path file = folder.resolve("bad.yaml");
    Files.write(file, bytes);
    Path pdf = folder.resolve("out.pdf");
    Ran checked = Cli.run("check", file.toString());
    Ran piped = new Cli().stdin(bytes).with("check", "-");
    Ran states = Cli.run("states", file.toString());
    Ran checklist = Cli.run("checklist", file.toString(), "-o", pdf.toString());
    for (Ran ran : List.of(checked, piped, states, checklist)) {
      assertEquals(2, ran.code(), ran.err());
      assertEquals("", ran.out());
      assertTrue(ran.err().contains("Do:"), ran.err());
      assertFalse(ran.err().contains("\tat "), ran.err());
      assertFalse(ran.err().contains("Exception"), ran.err());
      assertFalse(ran.err().contains("\u0001"), ran.err());
      assertTrue(ran.err().length() < 20_000, "a wall of text");
    }
    try (Stream<Path> left = Files.list(folder)) {
      assertEquals(List.of(file), left.toList());
    }
    return checked;
  }

  @Test
  void include_outside_the_folder_is_refused() throws IOException {
    Path inner = Files.createDirectory(folder.resolve("inner"));
    Files.writeString(folder.resolve("types.yaml"), "types: {}\n");
    Path file = inner.resolve("a.yaml");
    for (String include : List.of("../types.yaml", folder.resolve("types.yaml").toString())) {
      Files.writeString(
          file, good().replace("parts:\n", "include: [\"" + include + "\"]\nparts:\n"));
      Ran ran = Cli.run("check", file.toString());
      assertEquals(2, ran.code(), ran.out() + ran.err());
      assertTrue(ran.err().contains(", line "), ran.err());
    }
  }

  @Test
  void include_in_a_circle_is_refused() throws IOException {
    Path file = folder.resolve("a.yaml");
    Files.writeString(file, good().replace("parts:\n", "include: [b.yaml]\nparts:\n"));
    Files.writeString(folder.resolve("b.yaml"), "include: [c.yaml]\ntypes: {}\n");
    Files.writeString(folder.resolve("c.yaml"), "include: [b.yaml]\ntypes: {}\n");
    Ran ran = Cli.run("check", file.toString());
    assertEquals(2, ran.code(), ran.out() + ran.err());
    assertFalse(ran.err().contains("Exception"), ran.err());
  }

  @Test
  void an_include_that_is_not_there_is_refused() throws IOException {
    Path file = folder.resolve("a.yaml");
    Files.writeString(file, good().replace("parts:\n", "include: [none.yaml]\nparts:\n"));
    assertEquals(2, Cli.run("check", file.toString()).code());
  }
}
