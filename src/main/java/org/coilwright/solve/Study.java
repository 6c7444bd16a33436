package org.coilwright.solve;

import java.util.List;
import java.util.Optional;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Circuit;

/**
 * What the circuit does, computed once: every reachable position, each coil, load and contact in
 * it.
 */
public interface Study {
  Circuit circuit();

  /**
   * Names of the independent actuators, in table order: outputs, switches, thermostats, cut-outs.
   */
  List<String> columns();

  /** Every reachable steady state; all contacts at rest first. */
  List<State> states();

  /** Whatever is wrong with the states themselves. */
  List<Trouble> troubles();

  /** What a relay's coil gets. */
  CoilReading coil(String relay, State state);

  /** What decides over a relay's armature; empty if its coil voltage cannot be known. */
  Optional<CoilLimits> limits(String relay);

  /** What a load does. */
  LoadReading load(String load, State state);

  /** What a contact carries or holds off. */
  ContactReading contact(Branch.Contact contact, State state);

  /** What a source delivers; {@code source} is the branch's id. */
  SupplyReading supply(String source, State state);

  /** Ohms of a conductor at the hottest the site names; empty if length or size is missing. */
  Optional<org.coilwright.table.Cited<Double>> hotOhms(Branch.Conductor conductor);
}
