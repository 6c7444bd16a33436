package org.coilwright.netlist;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class KeyGuideTest {
  private static final String YAML =
      """
        coilwright: 1
        circuit: {title: Cellar}
        site: {practice: iec}
        parts:
          S1: {is: switch}
          B1: {is: thermostat}
          U1: {is: controller, outputs: {heat: {pins: [1, 2], form: NO}}}
          K1:
            is: relay
            coil: {pins: [A1, A2], voltage: 24 V DC}
            contacts:
              - {pins: [11, 14], form: NO}
          E1: {is: heater, connection: single}
        runs:
          W1: {size: 0.75 mm²}
        wires:
          - U1.1 to S1.1
      """;

  private static final Netlist NETLIST = netlist();

  private static Netlist netlist() {
    Reading reading = NetlistReader.read("cellar.yaml", YAML.getBytes(StandardCharsets.UTF_8));
    return ((Reading.Read) reading).netlist();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "ratings.DC-13 of S1.1-2 | ratings: {DC-13: 1 A at 30 V}",
        "ratings.DC-1 of U1.heat | ratings: {DC-1: 1 A at 30 V}",
        "ratings.AC-15 of K1.11-14 | ratings: {AC-15: 3 A at 230 V}",
        "least-load of K1.11-14 | least-load: 100 mA at 12 V",
        "coil.range of K1 | coil: {range: 80..110 %}",
        "life.AC-3 of K1 | life: {AC-3: 50000 at 16 A}",
        "mains.voltage of U1 | mains: {voltage: 230 V}",
        "vessel.litres of E1 | vessel: {litres: 300}",
        "length of W1 | length: 12 m",
        "size of U1.1 to S1.1 | size: 6 mm²",
        "site.mains.loop-impedance | mains: {loop-impedance: 0.6 Ω}",
        "switching.plant.battery.floor | plant: {battery: {floor: 15 %}}",
        "voltage of ratings.DC-13 of S1 | ratings: {DC-13: 1 A at 30 V}",
        "ratings.DC-1 of S1, U1.heat | ratings: {DC-1: 1 A at 30 V}",
        "tolerance of opens-at of B1 | opens-at: 60 °C ± 5 K",
        "intent of E1 | intent: {E1: U1.heat and S1}",
      })
  void a_missing_key_is_shown_as_it_may_be_written(String missing, String example) {
    assertEquals(
        Optional.of(example), KeyGuide.of(NETLIST, missing).map(KeyGuide::example), missing);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "let-through energy of K1 at 5000 A",
        "colour of K1",
        "ratings.AC-99 of K1",
        "coil.range of K9",
        "a smaller group than U1.heat",
        "site.weather",
      })
  void what_no_key_holds_has_no_example(String missing) {
    assertTrue(KeyGuide.of(NETLIST, missing).isEmpty(), missing);
  }

  @Test
  void the_part_that_a_key_belongs_to_is_told() {
    KeyGuide guide = KeyGuide.of(NETLIST, "ratings.DC-13 of S1.1-2").orElseThrow();
    assertEquals("S1", guide.owner());
    assertEquals(KeyGuide.Place.PART, guide.place());
  }
}
