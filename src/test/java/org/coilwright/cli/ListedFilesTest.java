package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.coilwright.cli.Cli.Ran;
import org.junit.jupiter.api.Test;

/** {@code check --as ndjson -}: names in, lines out. */
class ListedFilesTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String TUB = "wiring-examples/wash-room-tub.yaml";
  private static final String ATTIC = "wiring-examples/attic-mistakes.yaml";

  private static Ran listed(String names, String... options) {
    List<String> args = new ArrayList<>(List.of("check", "--as", "ndjson"));
    args.addAll(List.of(options));
    args.add("-");
    return new Cli()
        .stdin(names.getBytes(StandardCharsets.UTF_8))
        .with(args.toArray(String[]::new));
  }

  private static JsonNode line(Ran ran, int number) throws IOException {
    return JSON.readTree(ran.out().lines().toList().get(number));
  }

  @Test
  void a_line_is_the_member_that_json_lists() throws IOException {
    Ran lines = listed(ATTIC + "\n" + TUB + "\n");
    assertEquals(1, lines.code());
    assertEquals("", lines.err());
    assertEquals(2, lines.out().lines().count());
    JsonNode files = JSON.readTree(Cli.run("check", "--as", "json", ATTIC, TUB).out()).get("files");
    for (int i = 0; i < 2; i++) {
      ObjectNode one = (ObjectNode) line(lines, i);
      assertEquals(1, one.remove("coilwright").asInt());
      assertEquals(files.get(i), one);
    }
  }

  @Test
  void what_cannot_be_used_is_a_line_too_and_ends_with_2() throws IOException {
    Ran ran = listed("no such file.yaml\n" + TUB + "\nREADME.md\n-\n" + "x".repeat(100_000));
    assertEquals(2, ran.code());
    assertEquals("", ran.err());
    assertEquals(5, ran.out().lines().count());
    for (int i : List.of(0, 2, 3, 4)) {
      assertTrue(line(ran, i).get("verdict").isNull());
      assertFalse(line(ran, i).get("problems").isEmpty());
    }
    assertEquals("NOTE", line(ran, 1).get("verdict").asText());
    assertEquals("./-", line(ran, 3).get("file").asText());
  }

  @Test
  void the_exit_code_goes_by_fail_on() {
    assertEquals(0, listed(TUB).code());
    assertEquals(1, listed(TUB, "--fail-on", "note").code());
    assertEquals(1, listed(ATTIC + "\n" + TUB).code());
  }

  @Test
  void line_ends_of_any_system_and_empty_lines_are_no_part_of_a_name() {
    Ran ran = listed("\r\n" + TUB + "\r\n\n" + TUB);
    assertEquals(0, ran.code(), ran.out());
    assertEquals(2, ran.out().lines().count());
  }

  @Test
  void files_may_be_named_as_arguments_instead() {
    Ran ran = Cli.run("check", "--as", "ndjson", TUB, TUB);
    assertEquals(0, ran.code());
    assertEquals(listed(TUB + "\n" + TUB).out(), ran.out());
  }

  @Test
  void no_name_at_all_is_no_result() {
    Ran ran = listed("\n");
    assertEquals(2, ran.code());
    assertEquals("", ran.out());
    assertTrue(ran.err().contains("nothing was judged"), ran.err());
  }

  @Test
  void names_come_from_one_place() {
    Ran ran = Cli.run("check", "--as", "ndjson", TUB, "-");
    assertEquals(2, ran.code());
    assertEquals("", ran.out());
  }

  /** Names without end, and nobody who reads the lines any more, as behind {@code head}. */
  @Test
  void it_stops_when_nobody_reads_on() {
    byte[] name = (TUB + "\n").getBytes(StandardCharsets.UTF_8);
    InputStream endless =
        new InputStream() {
          private int at;

          @Override
          public int read() {
            return name[at++ % name.length];
          }

          @Override
          public int read(byte[] into, int from, int most) {
            byte[] some = Arrays.copyOf(name, Math.min(most, name.length));
            System.arraycopy(some, 0, into, from, some.length);
            return some.length;
          }
        };
    OutputStream closing =
        new OutputStream() {
          private int left = 100_000;

          @Override
          public void write(int b) throws IOException {
            if (left-- < 0) {
              throw new IOException("nobody reads");
            }
          }
        };
    Console console =
        new Console(
            endless,
            new PrintStream(closing, false, StandardCharsets.UTF_8),
            new PrintStream(OutputStream.nullOutputStream(), false, StandardCharsets.UTF_8),
            Map.of(),
            Set.of(),
            () -> LocalDate.EPOCH);
    assertEquals(2, new Main(console).run("check", "--as", "ndjson", "-"));
  }
}
