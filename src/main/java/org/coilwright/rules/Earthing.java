package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Domain;
import org.coilwright.circuit.Node;
import org.coilwright.circuit.Routes;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Quantity;
import org.coilwright.solve.Study;

/**
 * How the protective conductor of a mains load, or of a controller or supply with a {@code PE}
 * among the pins of its mains input, gets to the mains.
 *
 * @param load the load, controller or supply
 * @param pin its {@code PE}
 * @param mains the mains' {@code PE}
 * @param byWire true if wires and clamps alone lead there
 * @param way the shortest way through wires, contacts and diodes, if there is one
 */
record Earthing(Part load, Node pin, Node mains, boolean byWire, Optional<Path> way) {
  static final String PE = "PE";

  private static final String CLASS_ONE = "I";

  /** What is built with an earthed metal case as a rule. Others may be double insulated. */
  private static final Set<String> EARTHED = Set.of("heater", "motor");

  /**
   * True if a part needs a protective conductor: a load of class I, or of no written class and a
   * kind that is built so as a rule, or a controller or supply whose mains input is written with
   * one.
   */
  static boolean isNeeded(Part part) {
    Optional<String> written = part.head().protectionClass().map(Written::value);
    if (written.isPresent()) {
      return written.get().equals(CLASS_ONE);
    }
    return EARTHED.contains(part.head().is())
        || Part.inputOf(part).filter(in -> in.pins().contains(PE)).isPresent();
  }

  /**
   * True for a load of no written class whose rated voltage is extra-low, whatever it hangs on.
   *
   * @param limit V, up to which a voltage is extra-low
   */
  static boolean isForExtraLow(Part part, double limit) {
    return part.head().protectionClass().isEmpty()
        && (part instanceof Part.Heater heater
                ? heater.voltage()
                : part instanceof Part.OtherLoad load
                    ? load.voltage()
                    : Optional.<Written<Quantity>>empty())
            .filter(v -> !Comparison.exceeds(v.value().high(), limit))
            .isPresent();
  }

  /**
   * The protective conductors of all loads that hang on the mains, in the order of the netlist;
   * also of one that hangs on them through something else, such as another load.
   */
  static List<Earthing> ofLoads(Study study) {
    return study.derived(All.class, Earthing::workedOut).loads();
  }

  /** The same, then those of controllers and supplies on the mains that have such a pin. */
  static List<Earthing> ofLoadsAndInputs(Study study) {
    All all = study.derived(All.class, Earthing::workedOut);
    return Stream.concat(all.loads().stream(), all.inputs().stream()).toList();
  }

  /** Kept with the study. */
  private record All(List<Earthing> loads, List<Earthing> inputs) {}

  private static All workedOut(Study study) {
    Circuit circuit = study.circuit();
    List<Node> bars =
        circuit.netlist().parts().values().stream()
            .filter(Part.Mains.class::isInstance)
            .flatMap(part -> circuit.find(new Terminal(part.name(), PE)).stream())
            .toList();
    Feeding whole = Feeding.whole(study);
    // what hangs on the neutral alone is not earthed, however the neutral is joined to earth
    Set<Branch> parting = NeutralEarth.of(study).parting();
    Routes ways = circuit.routes(b -> Circuit.isWay(b) && !parting.contains(b));
    Routes wires = circuit.routes(b -> b instanceof Conductor && !parting.contains(b));
    List<Earthing> loads = new ArrayList<>();
    for (Part load : Loads.of(circuit)) {
      Optional<Node> pin = circuit.find(new Terminal(load.name(), PE));
      if (pin.isPresent()
          && !bars.isEmpty()
          && (whole.at(load.name()).areMains() || isInMains(circuit, load))) {
        loads.add(of(ways, wires, load, pin.get(), bars));
      }
    }
    List<Earthing> inputs = new ArrayList<>();
    for (MainsConsumer consumer : Regions.of(study).consumers()) {
      Part part = circuit.netlist().parts().get(consumer.name());
      if (part != null && Part.inputOf(part).isPresent() && isNeeded(part)) {
        Optional<Node> pin = circuit.find(new Terminal(part.name(), PE));
        if (pin.isPresent() && !bars.isEmpty() && !consumer.fed(whole).isEmpty()) {
          inputs.add(of(ways, wires, part, pin.get(), bars));
        }
      }
    }
    return new All(List.copyOf(loads), List.copyOf(inputs));
  }

  private static boolean isInMains(Circuit circuit, Part load) {
    return circuit.branchesOf(load.name()).stream()
        .anyMatch(branch -> circuit.domain(branch.from()) == Domain.MAINS);
  }

  private static Earthing of(Routes ways, Routes wires, Part load, Node pin, List<Node> bars) {
    for (Node bar : bars) {
      Optional<Path> way = ways.shortest(bar, pin);
      if (way.isPresent()) {
        return new Earthing(load, pin, bar, wires.shortest(bar, pin).isPresent(), way);
      }
    }
    return new Earthing(load, pin, bars.get(0), false, Optional.empty());
  }
}
