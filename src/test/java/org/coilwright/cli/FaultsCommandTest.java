package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;

class FaultsCommandTest {
  private static final String CYLINDER = "wiring-examples/guest-house-cylinder.yaml";

  @Test
  void a_contactor_that_sticks_leaves_only_the_cut_out_and_a_hand() {
    Cli.Ran ran = Cli.run("faults", CYLINDER);
    assertEquals(0, ran.code(), ran.err());
    String block = ran.out().substring(ran.out().indexOf("Q1 stays pulled in"));
    String first = block.lines().limit(3).reduce("", (a, b) -> a + " " + b.strip());
    assertTrue(first.contains("E1 is on when it should be off"), first);
    assertTrue(first.contains("F3 (cut-out)"), first);
    assertFalse(first.contains("B1"), "its thermostat only opens the coil: " + first);
  }

  @Test
  void the_worst_comes_first_and_no_line_is_wider_than_the_terminal() {
    Cli.Ran ran = Cli.run("faults", CYLINDER);
    List<String> lines = ran.out().lines().toList();
    assertTrue(lines.get(2).startsWith("Mains reaches the extra-low-voltage side"), ran.out());
    assertTrue(lines.stream().allMatch(l -> l.length() <= 80), ran.out());
  }

  @Test
  void insulation_that_is_stated_as_reinforced_is_shown_and_said_to_be_so() {
    String out = Cli.run("faults", CYLINDER).out();
    assertTrue(out.indexOf("and contacts (stated as") > out.indexOf("Mains reaches"), out);
    String json = Cli.run("faults", "--as", "json", CYLINDER).out();
    assertTrue(json.contains("stated as reinforced: made so that one fault does not do this"));
  }

  @Test
  void json_names_every_fault_that_behaves_alike() throws IOException {
    JsonNode json = new ObjectMapper().readTree(Cli.run("faults", "--as", "json", CYLINDER).out());
    int faults = 0;
    for (JsonNode alike : json.get("faults")) {
      assertTrue(alike.get("breaks").size() > 0);
      faults += alike.get("breaks").size();
    }
    assertTrue(faults > 90, "every wire, contact, coil and pair of cores: " + faults);
  }
}
