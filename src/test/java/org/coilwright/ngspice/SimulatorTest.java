package org.coilwright.ngspice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SimulatorTest {
  private static final Deck DIVIDER =
      Deck.operatingPoint(
          "divider", List.of("V1 a 0 DC 24", "R1 a b 10", "R2 b 0 30"), List.of("v(b)"));

  private static Path recorded(Path folder, Deck deck, String answer) throws IOException {
    Path file = folder.resolve("recorded.txt");
    Files.writeString(
        file, "# x\ndeck " + deck.fingerprint() + " " + deck.name() + "\n" + answer + "\n");
    return file;
  }

  @Test
  void without_the_program_the_recorded_answer_is_given(@TempDir Path folder) throws IOException {
    Simulator offline = Simulator.offline(recorded(folder, DIVIDER, "v(b) = 18.0"));
    assertEquals(Map.of("divider", Map.of("v(b)", 18.0)), offline.answers(List.of(DIVIDER)));
  }

  @Test
  void the_recording_of_another_circuit_is_refused(@TempDir Path folder) throws IOException {
    Simulator offline = Simulator.offline(recorded(folder, DIVIDER, "v(b) = 18.0"));
    Deck changed =
        Deck.operatingPoint(
            "divider", List.of("V1 a 0 DC 24", "R1 a b 10", "R2 b 0 31"), List.of("v(b)"));
    assertThrows(IllegalStateException.class, () -> offline.answers(List.of(changed)));
  }

  @Test
  void a_missing_recording_is_refused(@TempDir Path folder) {
    Simulator offline = Simulator.offline(folder.resolve("none.txt"));
    assertThrows(IllegalStateException.class, () -> offline.answers(List.of(DIVIDER)));
  }

  @Test
  void a_recording_that_nothing_asks_for_is_refused(@TempDir Path folder) throws IOException {
    Simulator offline = Simulator.offline(recorded(folder, DIVIDER, "v(b) = 18.0"));
    assertThrows(IllegalStateException.class, () -> offline.answers(List.of()));
  }

  @Test
  void the_program_itself_answers_where_it_is_on_the_path() {
    Ngspice.onPath()
        .ifPresent(
            n -> {
              Map<String, Double> answers =
                  n.run(List.of(DIVIDER)).getOrDefault("divider", Map.of());
              assertEquals(18.0, answers.getOrDefault("v(b)", Double.NaN), 1e-9);
            });
  }

  @Test
  void a_circuit_that_cannot_be_solved_has_no_answer() {
    Ngspice.onPath()
        .ifPresent(
            n -> {
              Deck fight =
                  Deck.operatingPoint(
                      "fight", List.of("V1 a 0 DC 1", "V2 a 0 DC 2"), List.of("v(a)"));
              assertTrue(n.run(List.of(fight)).getOrDefault("fight", Map.of("x", 0.0)).isEmpty());
            });
  }
}
