package org.coilwright.checklist;

import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Circuits with one fault each, and circuits that somebody cut pieces out of, all get a sheet. */
class EveryFixtureTest {
  @TestFactory
  Stream<DynamicTest> a_sheet_is_made_for_every_fixture_of_the_rules() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("src/test/resources/rules"))) {
      return files
          .filter(f -> f.toString().endsWith(".yaml"))
          .sorted()
          .map(
              f ->
                  DynamicTest.dynamicTest(
                      f.toString(),
                      () -> assertFalse(Checked.file(f).rows().isEmpty(), "no test rows")))
          .toList()
          .stream();
    }
  }

  /** Whatever can still be read after a line was lost must still give a sheet, not a defect. */
  @Test
  void a_sheet_is_made_for_whatever_can_still_be_read() throws IOException {
    Random random = new Random(7);
    int made = 0;
    for (String example :
        new String[] {"wash-room-tub", "guest-house-cylinder", "cabin-water-heater"}) {
      String[] lines =
          Files.readString(Path.of("wiring-examples", example + ".yaml")).split("\n", -1);
      for (int i = 0; i < 40; i++) {
        StringBuilder text = new StringBuilder();
        int lost = random.nextInt(lines.length);
        for (int line = 0; line < lines.length; line++) {
          if (line != lost) {
            text.append(lines[line]).append('\n');
          }
        }
        if (Checked.tryText(text.toString()).isPresent()) {
          made++;
        }
      }
    }
    assertFalse(made < 40, "too few could be read to tell anything: " + made);
  }
}
