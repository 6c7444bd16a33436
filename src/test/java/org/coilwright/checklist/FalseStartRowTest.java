package org.coilwright.checklist;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The test on site that no surplus is feigned in the evening. */
class FalseStartRowTest {
  private static List<TestRow> evening(Checklist checklist) {
    return checklist.rows().stream()
        .filter(r -> r.expected().equals(new Expected.Seen(Expected.State.STAYS_OPEN)))
        .toList();
  }

  @Test
  void a_plant_with_a_battery_has_the_largest_load_switched_off_after_dark() {
    List<TestRow> rows = evening(Checked.example("wash-room-tub"));
    assertEquals(1, rows.size());
    assertTrue(rows.get(0).action().contains("largest other load (4.5 kW)"));
    assertTrue(rows.get(0).where().contains("U1.heat"));
  }

  @Test
  void it_comes_after_the_settings_are_read_back() {
    List<TestRow> rows = Checked.example("wash-room-tub").rows();
    TestRow evening = evening(Checked.example("wash-room-tub")).get(0);
    int last = -1;
    for (int i = 0; i < rows.size(); i++) {
      last = rows.get(i).name().contains("-threshold") ? i : last;
    }
    assertEquals(true, last >= 0 && last < rows.indexOf(evening));
  }

  @Test
  void without_a_battery_or_settings_there_is_no_such_row() throws IOException {
    assertTrue(evening(Checked.example("cabin-water-heater")).isEmpty());
    String tub = Files.readString(Path.of("wiring-examples/wash-room-tub.yaml"));
    String without = tub.replaceAll("(?m)^    battery: .*$", "");
    assertFalse(without.equals(tub));
    assertTrue(evening(Checked.text(without)).isEmpty());
  }
}
