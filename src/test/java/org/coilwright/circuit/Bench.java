package org.coilwright.circuit;

import java.nio.charset.StandardCharsets;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.NetlistReader;
import org.coilwright.netlist.Reading;

/** Sets up a circuit from the parts and wires of a netlist, on a single-phase 230 V site. */
public final class Bench {
  private Bench() {}

  /** A circuit whose {@code parts}, {@code runs} and {@code wires} are written out. */
  public static Circuit circuit(String body) {
    return circuit("{phases: 1, voltage: 230 V ± 10 %, frequency: 50 Hz}", body);
  }

  /** The same with another mains. */
  public static Circuit circuit(String mains, String body) {
    return Circuit.of(netlist(mains, body));
  }

  /** A netlist; one that cannot be read fails the test with what is wrong. */
  public static Netlist netlist(String mains, String body) {
    String text =
        """
        coilwright: 1
        circuit: {title: on the bench}
        site: {mains: %s, enclosure-air: 0..45 °C, practice: iec}
        %s
        """
            .formatted(mains, body);
    Reading reading = NetlistReader.read("bench.yaml", text.getBytes(StandardCharsets.UTF_8));
    if (reading instanceof Reading.Unusable unusable) {
      throw new AssertionError(unusable.problems().toString());
    }
    return ((Reading.Read) reading).netlist();
  }
}
