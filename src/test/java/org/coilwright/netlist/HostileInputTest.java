// Over 250 lines: one hostile input after the other.
package org.coilwright.netlist;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.coilwright.netlist.Reading.Unusable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files that no person wrote on purpose, or someone wrote to do harm. */
class HostileInputTest {
  private static final int MUTATIONS = 20_000;

  private static List<ReadingProblem> problems(byte[] bytes) {
    return assertInstanceOf(Unusable.class, NetlistReader.read("x.yaml", bytes)).problems();
  }

  private static List<ReadingProblem> problems(String text) {
    return problems(text.getBytes(StandardCharsets.UTF_8));
  }

  private static void assertOnly(String what, List<ReadingProblem> problems) {
    assertEquals(List.of(what), problems.stream().map(ReadingProblem::what).toList());
  }

  private static byte[] small() throws IOException {
    return Files.readAllBytes(NetlistReaderTest.FOLDER.resolve("good-small-relay.yaml"));
  }

  @Test
  void a_byte_order_mark_is_no_obstacle() throws IOException {
    String text = "\uFEFF" + new String(small(), StandardCharsets.UTF_8);
    Reading reading = NetlistReader.read("x.yaml", text.getBytes(StandardCharsets.UTF_8));
    assertInstanceOf(Reading.Read.class, reading);
  }

  @Test
  void windows_line_ends_are_no_obstacle() throws IOException {
    String text = new String(small(), StandardCharsets.UTF_8).replace("\n", "\r\n");
    Netlist netlist =
        NetlistReaderTest.netlist(
            NetlistReader.read("x.yaml", text.getBytes(StandardCharsets.UTF_8)));
    assertEquals("coilwright: 1", netlist.text().lines().get(2));
    assertEquals("Immersion heater, 3 kW", netlist.about().title().value());
  }

  @Test
  void a_zero_byte_is_named_with_its_place() {
    ReadingProblem problem = problems("coilwright: 1\ncircuit: {title: a\0b}\n").get(0);
    assertEquals("a control character (U+0000) stands here", problem.what());
    assertEquals(new Mark("x.yaml", 2, 19, 20), problem.mark().orElseThrow());
  }

  @Test
  void characters_that_turn_the_reading_direction_are_refused() {
    assertOnly("a control character (U+202E) stands here", problems("coilwright: 1 # \u202Eabc\n"));
  }

  @Test
  void bytes_that_are_no_text_are_named_with_their_place() {
    byte[] bytes = "coilwright: 1\nnote: x\n".getBytes(StandardCharsets.UTF_8);
    bytes[20] = (byte) 0xC3;
    ReadingProblem problem = problems(bytes).get(0);
    assertEquals("the file is not UTF-8 text from here on", problem.what());
    assertEquals(2, problem.mark().orElseThrow().line());
    assertOnly(
        "the file is written in UTF-16",
        problems("coilwright: 1".getBytes(StandardCharsets.UTF_16)));
  }

  @Test
  void noise_is_refused() {
    byte[] noise = new byte[100_000];
    new Random(1).nextBytes(noise);
    assertEquals(1, problems(noise).size());
  }

  @Test
  void a_file_beyond_the_largest_is_refused_before_it_is_read() {
    ReadingProblem problem = problems(new byte[LargestFile.BYTES + 1]).get(0);
    assertEquals("the file has 24.1 MiB; at most 24 MiB are read", problem.what());
  }

  @Test
  void nesting_has_an_end() {
    assertOnly("this is nested too deeply", problems("a: " + "[".repeat(1_000_000)));
    assertOnly("this is nested too deeply", problems("a: " + "{b: ".repeat(100_000)));
    StringBuilder steps = new StringBuilder();
    for (int i = 0; i < 500; i++) {
      steps.append(" ".repeat(i)).append("a:\n");
    }
    assertOnly("this is nested too deeply", problems(steps.toString()));
    assertOnly("this is nested too deeply", problems("- ".repeat(500_000) + "x"));
    assertOnly("this is nested too deeply", problems("? ".repeat(500_000) + "x"));
  }

  @Test
  void aliases_that_multiply_are_stopped() {
    StringBuilder bomb = new StringBuilder("coilwright: 1\ntypes:\n  a0: &a0 [x, x, x, x]\n");
    for (int i = 1; i < 19; i++) {
      bomb.append("  a%d: &a%d [*a%d, *a%d]\n".formatted(i, i, i - 1, i - 1));
    }
    assertOnly("there are too many aliases (*)", problems(bomb.toString()));
    StringBuilder few = new StringBuilder("coilwright: 1\ntypes:\n");
    String hundreds = "[" + "x, ".repeat(9_000) + "x]";
    few.append("  a0: &a0 ").append(hundreds).append('\n');
    for (int i = 1; i < 10; i++) {
      few.append("  a%d: &a%d [*a%d, *a%d]\n".formatted(i, i, i - 1, i - 1));
    }
    assertOnly("an alias (*) makes the file grow without end here", problems(few.toString()));
  }

  @Test
  void an_alias_in_moderation_is_read() {
    String text =
        """
        coilwright: 1
        circuit: {title: Two outputs on the same pins}
        site: {practice: iec}
        parts:
          U1: {is: controller, outputs: {on: {pins: &pins [1, 2], form: NO}, off: {pins: *pins, form: NC}}}
        wires: []
        """;
    Netlist netlist = NetlistReaderTest.netlist(NetlistReaderTest.read(text));
    assertEquals(1, netlist.parts().size());
  }

  @Test
  void a_file_full_of_values_is_stopped() {
    assertOnly(
        "the file holds more than %d values".formatted(LargestFile.VALUES),
        problems("a: [" + "x,".repeat(LargestFile.VALUES + 1) + "]"));
  }

  @Test
  void wires_in_parallel_have_an_end() {
    String text =
        """
        coilwright: 1
        circuit: {title: wide}
        site: {practice: iec}
        parts:
          S1: {is: switch, form: NO, poles: 1}
          S2: {is: switch, form: NO, poles: 1}
        wires:
        """;
    assertOnly(
        "more than 64 wires join S1.2 and S2.1",
        problems(text + "  - S1.2 to S2.1\n".repeat(30_000)));
  }

  @Test
  void problems_without_number_are_cut_short() {
    StringBuilder text = new StringBuilder("coilwright: 1\n");
    for (int i = 0; i < 50_000; i++) {
      text.append("key").append(i).append(": ").append(i).append('\n');
    }
    List<ReadingProblem> problems = problems(text.toString());
    assertEquals(101, problems.size());
    assertTrue(problems.get(100).what().endsWith("further problems are not listed"));
  }

  @Test
  void an_excerpt_holds_no_control_characters() {
    String excerpt = FileText.excerpt("a\u001b[31mb\u009bc\u202Ed\te" + "x".repeat(500));
    assertFalse(excerpt.codePoints().anyMatch(Character::isISOControl));
    assertTrue(excerpt.startsWith("a\uFFFD[31mb\uFFFDc\uFFFDd e"));
    assertEquals(161, excerpt.length());
  }

  @Test
  void an_escape_in_a_quoted_word_does_not_reach_a_message() {
    List<ReadingProblem> problems = problems("\"coil\\e[2Jwright\": 1\ncoilwright: 1\n");
    assertFalse(
        problems.stream()
            .map(problem -> problem.what() + problem.remedy() + problem.excerpt().orElse(""))
            .anyMatch(text -> text.codePoints().anyMatch(Character::isISOControl)));
  }

  @Test
  void an_escape_in_a_text_is_refused() {
    String text = "coilwright: 1\ncircuit: {title: \"a\\e[2Jb\"}\nsite: {practice: iec}\n";
    String rest = "parts: {P1: {is: lamp, label: \"\\u202Eabc\"}}\nwires: []\n";
    assertEquals(
        List.of(
            "a control character stands in this text", "a control character stands in this text"),
        problems(text + rest).stream().map(ReadingProblem::what).toList());
  }

  @Test
  void a_text_without_end_is_refused() {
    String text = "coilwright: 1\ncircuit: {title: " + "x".repeat(1001) + "}\n";
    String rest = "site: {practice: iec}\nparts: {P1: {is: lamp}}\nwires: []\n";
    assertOnly("the text is longer than 1000 characters", problems(text + rest));
  }

  @Test
  void a_link_does_not_lead_out_of_the_folder(@TempDir Path temp) throws IOException {
    Path folder = Files.createDirectory(temp.resolve("job"));
    Path secret = Files.writeString(temp.resolve("secret.yaml"), "types: {}\n");
    Files.createSymbolicLink(folder.resolve("inside.yaml"), secret);
    Files.createSymbolicLink(folder.resolve("folder"), temp);
    Path netlist = Files.write(folder.resolve("job.yaml"), small());
    FolderIncludes includes = new FolderIncludes("job.yaml", netlist);
    for (String path : List.of("inside.yaml", "folder/secret.yaml", "../secret.yaml")) {
      Includes.Found found = includes.find("job.yaml", path);
      assertTrue(
          assertInstanceOf(Includes.Refused.class, found)
              .what()
              .endsWith("lies outside of the netlist's folder"),
          path);
    }
  }

  @Test
  void mutated_netlists_never_break_the_reader() throws IOException {
    List<byte[]> originals = new ArrayList<>();
    try (Stream<Path> files = Files.list(NetlistReaderTest.FOLDER)) {
      for (Path file : files.filter(f -> f.toString().contains("good-")).sorted().toList()) {
        originals.add(Files.readAllBytes(file));
      }
    }
    Random random = new Random(20260131);
    int read = 0;
    for (int i = 0; i < MUTATIONS; i++) {
      byte[] mutated = originals.get(random.nextInt(originals.size()));
      for (int n = 1 + random.nextInt(3); n > 0; n--) {
        mutated = Mutation.of(mutated, random);
      }
      Reading reading = NetlistReader.read("x.yaml", mutated);
      if (reading instanceof Unusable unusable) {
        assertSensible(unusable.problems());
      } else {
        read++;
      }
    }
    // a mutation that never left a netlist whole would test the YAML parser alone
    assertTrue(read > MUTATIONS / 20, () -> "too few are still readable");
  }

  private static void assertSensible(List<ReadingProblem> problems) {
    assertFalse(problems.isEmpty());
    for (ReadingProblem problem : problems) {
      assertFalse(problem.what().isBlank());
      assertFalse(problem.remedy().isBlank(), problem::toString);
      String told = problem.what() + problem.remedy() + problem.excerpt().orElse("");
      assertFalse(told.codePoints().anyMatch(Character::isISOControl), problem::toString);
      problem
          .mark()
          .ifPresent(
              mark -> {
                assertTrue(mark.line() >= 1 && mark.column() >= 1, problem::toString);
                assertTrue(mark.endColumn() > mark.column(), problem::toString);
              });
    }
  }
}
