package org.coilwright.checklist;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.coilwright.checklist.Checklist.Caution;
import org.junit.jupiter.api.Test;

/** What a sheet says of a source that may feed the circuit while the mains are off. */
class IslandSheetTest {
  private static final Path TUB = Path.of("wiring-examples/wash-room-tub.yaml");
  private static final String NONE = "  island: none\n";

  private static Checklist tub(String island) throws IOException {
    String text = Files.readString(TUB);
    assertTrue(text.contains(NONE), "the example no longer says that it has no island");
    return Checked.text(text.replace(NONE, island));
  }

  private static List<String> rows(Checklist checklist, String part) {
    return checklist.steps().stream()
        .filter(Section.class::isInstance)
        .flatMap(s -> ((Section) s).rows().stream())
        .map(TestRow::name)
        .filter(name -> name.contains(part))
        .toList();
  }

  private static boolean warns(Checklist checklist, String caution) {
    return checklist.cautions().stream()
        .map(Caution::title)
        .anyMatch(Cautions.note(caution).title()::equals);
  }

  @Test
  void a_circuit_that_is_stated_to_have_none_has_no_row_for_it() throws IOException {
    Checklist checklist = tub(NONE);
    assertEquals(List.of(), rows(checklist, "island"));
    assertEquals(List.of(), rows(checklist, "without-mains"));
    assertEquals(List.of(), rows(checklist, "backup-output"));
    assertTrue(!warns(checklist, "island") && !warns(checklist, "feeding-back"));
  }

  @Test
  void where_nobody_says_one_reading_without_the_mains_tells() throws IOException {
    Checklist checklist = tub("");
    assertEquals(1, rows(checklist, "without-mains").size());
    assertEquals(List.of(), rows(checklist, "island"));
    assertEquals(1, rows(checklist, "backup-output").size());
    assertTrue(warns(checklist, "island"));
  }

  @Test
  void an_island_has_its_device_its_bond_and_its_loop_measured_once_more() throws IOException {
    Checklist checklist =
        tub("  island: {rated-current: 20 A, fault-current: 60 A, neutral-bond: by-inverter}\n");
    assertEquals(1, rows(checklist, "island-neutral-to-earth").size());
    assertEquals(1, rows(checklist, "island-trip").size());
    assertEquals(1, rows(checklist, "island-loop-impedance").size());
    assertTrue(warns(checklist, "island") && warns(checklist, "feeding-back"));
  }

  @Test
  void a_controller_alone_is_reason_enough_to_lock_off_the_inverter() {
    Checklist cabin = Checked.example("cabin-water-heater");
    assertTrue(warns(cabin, "battery-plant"));
    assertEquals(List.of("inverter.locked-off"), rows(cabin, "inverter"));
  }
}
