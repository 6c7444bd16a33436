package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StatesCommandTest {
  private static final String MISTAKES = "wiring-examples/attic-mistakes.yaml";

  private static final String COIL =
      """
      coilwright: 1
      circuit: {title: one coil}
      site: {mains: {phases: 1, voltage: 230 V}, ambient: 20 °C, practice: iec}
      parts:
        G1: {is: dc-supply, output: {plus: P, minus: M, voltage: 12 V DC}}
        S1: {is: switch, form: NO, poles: 1}
        K1:
          is: relay
          coil: {pins: [A1, A2], voltage: 12 V DC, resistance: 100 Ω, release: 10 %, time-constant: 5 ms}
          contacts: [{pins: [11, 14], form: NO}]
        V1: {is: diode}
      wires:
        - G1.P to S1.1
        - S1.2 to K1.A1
        - K1.A2 to G1.M
      """;

  @TempDir Path folder;

  private String states(String text, String... more) throws IOException {
    Path file = Files.writeString(folder.resolve("coil.yaml"), text);
    String[] args = new String[2 + more.length];
    args[0] = "states";
    System.arraycopy(more, 0, args, 1, more.length);
    args[args.length - 1] = file.toString();
    Cli.Ran ran = Cli.run(args);
    assertEquals(0, ran.code(), ran.err());
    return ran.out();
  }

  @Test
  void a_coil_that_hangs_in_between_in_several_states_is_told_once() {
    String out = Cli.run("states", MISTAKES).out();
    String flat = out.replaceAll("\\s+", " ");
    assertEquals(2, flat.split("K1 may hang in between", -1).length, out);
    assertTrue(flat.contains("its coil gets 0.613 V to 0.654 V or 9.41 V to 11.3 V;"), out);
  }

  @Test
  void a_relay_that_goes_on_feeding_itself_is_not_told_when_it_lets_go() {
    Cli.Ran ran =
        Cli.run(
            "states",
            "src/test/resources/rules/wiring.two-steady-states/bad-contact-across-the-output.yaml");
    assertEquals(0, ran.code(), ran.err());
    assertFalse(ran.out().contains("Switched off"), ran.out());
    assertTrue(ran.out().contains("K1 may be in or out here"), ran.out());
  }

  @Test
  void how_a_coil_is_switched_off_is_told_below_the_table() throws IOException {
    String flat = states(COIL + "  - V1.K to K1.A1\n  - V1.A to K1.A2\n").replaceAll("\\s+", " ");
    assertTrue(
        flat.contains(
            "Switched off (an estimate, all at nominal values) K1: after S1.1-2 opens its current"
                + " lasts 9.50 ms until the armature surely lets go; 0.700 V across the coil and"
                + " 12.7 V across the contact"),
        flat);
  }

  @Test
  void a_coil_with_nothing_across_it_gets_no_peak() throws IOException {
    String out = states(COIL);
    assertTrue(out.contains("nothing takes its current when S1.1-2 opens"), out);
    JsonNode off = new ObjectMapper().readTree(states(COIL, "--as", "json")).get("switchedOff");
    assertEquals("K1", off.get(0).get("relay").asText());
    assertFalse(off.get(0).has("coilVolts"));
  }

  @Test
  void a_coil_without_a_time_constant_is_left_out_of_the_estimate() throws IOException {
    String out = states(COIL.replace(", time-constant: 5 ms", ""));
    assertFalse(out.contains("Switched off"), out);
  }
}
