package org.coilwright.circuit;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import org.coilwright.netlist.NetlistReader;
import org.coilwright.netlist.Reading;
import org.coilwright.quantity.Quantity;
import org.junit.jupiter.api.Test;

class MainsSourcesTest {
  private static Quantity lineToNeutral(String mains) {
    String text =
        """
        coilwright: 1
        circuit: {title: mains alone}
        site: {mains: {%s, frequency: 50 Hz, earthing: TN-S}, practice: iec}
        parts:
          G0: {is: mains}
          X1: {is: terminals, count: 1}
        wires:
          - {from: G0.PE, to: X1.1, length: 1 m, size: 1 mm²}
        """
            .formatted(mains);
    Reading reading = NetlistReader.read("mains.yaml", text.getBytes(StandardCharsets.UTF_8));
    Circuit circuit = Circuit.of(((Reading.Read) reading).netlist());
    return circuit.branches(Branch.Source.class).get(0).volts().orElseThrow();
  }

  @Test
  void a_400_V_network_is_a_230_V_one_and_its_tolerance_counts_from_230_V() {
    Quantity volts = lineToNeutral("phases: 3, voltage: 400 V ± 10 %");
    assertEquals(400 / Math.sqrt(3), volts.nominal(), 1e-9);
    assertEquals(207, volts.low(), 1e-9);
    assertEquals(253, volts.high(), 1e-9);
  }

  @Test
  void a_voltage_that_no_standard_names_is_divided_by_the_root_of_three() {
    Quantity volts = lineToNeutral("phases: 3, voltage: 300 V ± 10 %");
    assertEquals(330 / Math.sqrt(3), volts.high(), 1e-9);
  }

  @Test
  void one_phase_is_taken_as_written_and_split_phase_is_halved() {
    assertEquals(253, lineToNeutral("phases: 1, voltage: 230 V ± 10 %").high(), 1e-9);
    assertEquals(126, lineToNeutral("phases: split, voltage: 120/240 V ± 5 %").high(), 1e-9);
  }
}
