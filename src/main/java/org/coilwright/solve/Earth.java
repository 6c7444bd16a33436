package org.coilwright.solve;

import java.util.Optional;
import org.coilwright.circuit.Branch.Joint;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Terminal;

/**
 * Earth as a conductor that touches it meets it.
 *
 * @param terminal the protective conductor of the mains; empty if the circuit has none
 * @param bond from the neutral to it, at the supply; empty in a network without one (IT)
 */
record Earth(Optional<Node> terminal, Optional<Joint> bond) {
  /** Two electrodes in series, where the site names no loop impedance of its TT network. */
  private static final double ELECTRODES = 100;

  /** The loop of a TN network, where the site names none. */
  private static final double LOOP = 0.5;

  static Earth of(Circuit circuit) {
    for (Part part : circuit.netlist().parts().values()) {
      if (part instanceof Part.Mains mains) {
        Optional<Node> earth = circuit.find(new Terminal(mains.name(), "PE"));
        Optional<Node> neutral = circuit.find(new Terminal(mains.name(), "N"));
        if (earth.isPresent()) {
          return new Earth(
              earth,
              neutral
                  .filter(n -> isBonded(circuit))
                  .map(n -> bond(circuit, mains, n, earth.get())));
        }
      }
    }
    return new Earth(Optional.empty(), Optional.empty());
  }

  private static String network(Circuit circuit) {
    return circuit
        .netlist()
        .site()
        .mains()
        .flatMap(Site.MainsSupply::earthing)
        .map(w -> w.value())
        .orElse("TN-S");
  }

  private static boolean isBonded(Circuit circuit) {
    return !network(circuit).equals("IT");
  }

  private static Joint bond(Circuit circuit, Part.Mains mains, Node neutral, Node earth) {
    double ohms =
        circuit
            .netlist()
            .site()
            .mains()
            .flatMap(Site.MainsSupply::loopImpedance)
            .map(w -> w.value().nominal())
            .orElse(network(circuit).equals("TT") ? ELECTRODES : LOOP);
    return new Joint("bond " + mains.name(), neutral, earth, mains.head().mark(), ohms);
  }
}
