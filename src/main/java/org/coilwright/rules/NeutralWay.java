package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.circuit.Routes;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Run;
import org.coilwright.rules.Feeding.Kind;
import org.coilwright.rules.Feeding.Side;
import org.coilwright.solve.Study;

/**
 * How a consumer of the mains returns its current, as far as its own circuit goes.
 *
 * @param devices the breaker or fuse of each of its lines that lies nearest to it, with every
 *     contact closed; a fuse only where there is no breaker
 * @param wires from its neutral pin to the first neutral pole of a device, or to the mains
 * @param feeders runs that bring a line to these devices
 */
record NeutralWay(
    MainsConsumer consumer, Set<Part> devices, Set<Conductor> wires, Set<String> feeders) {

  /** Of each consumer that has a device in every line and a pin on the neutral alone. */
  static List<NeutralWay> all(Study study) {
    Feeding whole = Feeding.whole(study);
    Routes routes = study.circuit().routes(Feeding::isWay);
    List<NeutralWay> all = new ArrayList<>();
    for (MainsConsumer consumer : Regions.of(study).consumers()) {
      NeutralWay way =
          new NeutralWay(
              consumer, new LinkedHashSet<>(), new LinkedHashSet<>(), new LinkedHashSet<>());
      for (Node pin : consumer.pins()) {
        for (Side side : whole.at(pin)) {
          if (side.kind() == Kind.LINE) {
            routes.shortest(side.node(), pin).ifPresent(p -> way.follow(study.circuit(), p));
          } else if (side.kind() == Kind.NEUTRAL && MainsConsumer.isNeutral(whole, pin)) {
            routes.shortest(pin, side.node()).ifPresent(p -> way.back(study.circuit(), p));
          }
        }
      }
      if (!way.devices().isEmpty() && !way.wires().isEmpty()) {
        all.add(way);
      }
    }
    return all;
  }

  /** True if a wire is the neutral of this circuit, and not of the cable that feeds its devices. */
  boolean returnsBy(Conductor wire) {
    return wires.contains(wire) && wire.run().map(Run::name).filter(feeders::contains).isEmpty();
  }

  private void follow(Circuit circuit, Path line) {
    int behind = 0;
    boolean breaker = false;
    List<Branch> branches = line.branches();
    for (int i = 0; i < branches.size(); i++) {
      Part part = circuit.netlist().parts().get(branches.get(i).part());
      boolean breaks = part instanceof Part.Protective device && !device.isRcd();
      if (breaks || (part instanceof Part.Fuse && !breaker)) {
        behind = i + 1;
        breaker |= breaks;
      }
    }
    for (int i = 0; i < behind - 1; i++) {
      if (branches.get(i) instanceof Conductor wire) {
        wire.run().map(Run::name).ifPresent(feeders::add);
      }
    }
    if (behind > 0) {
      Part device = circuit.netlist().parts().get(branches.get(behind - 1).part());
      if (device != null) {
        devices.add(device);
      }
    }
  }

  private void back(Circuit circuit, Path neutral) {
    for (Branch branch : neutral.branches()) {
      if (branch instanceof Contact contact
          && contact.neutralPole()
          && circuit.netlist().parts().get(contact.part()) instanceof Part.Protective) {
        return;
      }
      if (branch instanceof Conductor wire) {
        wires.add(wire);
      }
    }
  }
}
