package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.coilwright.cli.Cli.Ran;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Measurements that the plant of the netlist cannot have given, and those with which nothing
 * happens.
 */
class MeasuredDayTest {
  private static final String TUB = "wiring-examples/wash-room-tub.yaml";

  @TempDir Path folder;

  private String day(String... lines) throws IOException {
    Path file = folder.resolve("day.csv");
    Files.writeString(file, String.join("\n", lines) + "\n");
    return file.toString();
  }

  @Test
  void kilowatts_in_a_column_of_watts_and_the_other_way_round_are_told() throws IOException {
    Ran small =
        Cli.run("rehearse", TUB, "--day", day("time,pv W,house W", "0,5.5,350", "60,5,350"));
    assertEquals(0, small.code(), small.err());
    assertTrue(small.out().contains("The contact never closed: nothing was tried."), small.out());
    assertFalse(small.out().contains("No false start"), small.out());
    assertTrue(small.err().contains("reaches no more than 5.50 W"), small.err());
    Ran large =
        Cli.run("rehearse", TUB, "--day", day("time,pv kW,house W", "0,55,350", "60,50,350"));
    assertEquals(2, large.code());
    assertTrue(large.err().contains("reaches 55 kW"), large.err());
  }

  @Test
  void energy_below_a_watt_hour_is_not_nothing() {
    assertEquals("0.69 Wh", RehearsalText.energy(0.689));
    assertEquals("0.98 Wh", RehearsalText.energy(0.978));
    assertEquals("0", RehearsalText.energy(0.004));
  }
}
