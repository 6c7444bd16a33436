package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A result that does not arrive whole is none. */
class WholeOutputTest {
  private static final String TUB = "wiring-examples/wash-room-tub.yaml";

  @TempDir Path folder;

  private final ByteArrayOutputStream said = new ByteArrayOutputStream();

  /** Takes so many bytes and then fails with those words. */
  private static OutputStream full(int room, String words) {
    return new OutputStream() {
      private int left = room;

      @Override
      public void write(int b) throws IOException {
        if (left == 0) {
          throw new IOException(words);
        }
        left--;
      }
    };
  }

  private int run(OutputStream out, String... args) {
    Console console =
        new Console(
            new ByteArrayInputStream(new byte[0]),
            Outlet.to(out),
            new PrintStream(said, true, StandardCharsets.UTF_8),
            Map.of(),
            Set.of(),
            () -> LocalDate.of(2026, 3, 1));
    return new Main(console).run(args);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "check " + TUB,
        "check --as json " + TUB,
        "check --as sarif " + TUB,
        "states " + TUB,
        "faults " + TUB,
        "rehearse " + TUB,
        "checklist " + TUB + " -o -",
        "checklist " + TUB + " --coverage",
        "schema",
        "new",
        "explain coil.too-low",
        "check --help",
        "--help",
        "--version"
      })
  void on_a_full_disk_it_is_said_and_never_ends_with_0(String command) {
    for (int room : List.of(0, 10)) {
      said.reset();
      assertEquals(2, run(full(room, "No space left on device"), command.split(" ", -1)), command);
      String text = said.toString(StandardCharsets.UTF_8);
      assertTrue(text.contains("the result could not be written to its end"), text);
    }
  }

  @Test
  void a_reader_who_has_seen_enough_is_told_nothing() {
    assertEquals(2, run(full(100, "Broken pipe"), "schema"));
    assertEquals("", said.toString(StandardCharsets.UTF_8));
  }

  @Test
  void what_goes_into_a_file_does_not_need_the_output() {
    String pdf = folder.resolve("sheet.pdf").toString();
    assertEquals(0, run(full(0, "closed"), "checklist", TUB, "-o", pdf));
    assertFalse(said.toString(StandardCharsets.UTF_8).contains("could not be written"));
  }
}
