package org.coilwright.rules;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Part;
import org.coilwright.sizing.PowerSide;
import org.coilwright.solve.Study;

/** Residual-current devices in the ways of a load. */
final class ResidualDevices {
  private ResidualDevices() {}

  /** All of a circuit, in the order of the netlist. */
  static List<Part.Protective> of(Circuit circuit) {
    return circuit.netlist().parts().values().stream()
        .filter(p -> p instanceof Part.Protective device && device.isRcd())
        .map(Part.Protective.class::cast)
        .toList();
  }

  /** What reaches where with one of them, or any other device, open. */
  static Feeding opened(Study study, Part device) {
    return Feeding.of(study, b -> !(b instanceof Contact c && c.part().equals(device.name())));
  }

  /** The parts of which a pin loses the mains when it opens, in the order of the netlist. */
  static List<Part> behind(Study study, Part.Protective device) {
    Circuit circuit = study.circuit();
    Feeding whole = Feeding.whole(study);
    Feeding open = opened(study, device);
    return Regions.of(study).consumersThatFeel(device).stream()
        .filter(c -> c.fed(whole).stream().anyMatch(p -> !MainsConsumer.isOnMains(open, p)))
        .flatMap(c -> Optional.ofNullable(circuit.netlist().parts().get(c.name())).stream())
        .distinct()
        .toList();
  }

  /** The one that every line of the load passes; of several the most sensitive. */
  static Optional<Part.Protective> inEveryLine(PowerSide side, Part load) {
    return allInEveryLine(side, load).stream().findFirst();
  }

  /** Those that every line of the load passes, the most sensitive first. */
  static List<Part.Protective> allInEveryLine(PowerSide side, Part load) {
    List<PowerSide.Way> lines = side.linesTo(load);
    Set<Part.Protective> all = new LinkedHashSet<>();
    boolean first = true;
    for (PowerSide.Way way : lines) {
      Set<Part.Protective> here = new LinkedHashSet<>();
      way.path().branches().stream()
          .filter(Contact.class::isInstance)
          .map(b -> side.circuit().netlist().parts().get(b.part()))
          .filter(p -> p instanceof Part.Protective device && device.isRcd())
          .forEach(p -> here.add((Part.Protective) p));
      if (first) {
        all.addAll(here);
        first = false;
      } else {
        all.retainAll(here);
      }
    }
    return all.stream().sorted((a, b) -> Double.compare(trip(a), trip(b))).toList();
  }

  private static double trip(Part.Protective device) {
    return device.trip().map(t -> t.value().high()).orElse(Double.POSITIVE_INFINITY);
  }
}
