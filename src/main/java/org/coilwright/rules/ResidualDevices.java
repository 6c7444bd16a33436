package org.coilwright.rules;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.netlist.Part;
import org.coilwright.sizing.PowerSide;

/** Residual-current devices in the ways of a load. */
final class ResidualDevices {
  private ResidualDevices() {}

  /** The one that every line of the load passes; of several the most sensitive. */
  static Optional<Part.Protective> inEveryLine(PowerSide side, Part load) {
    List<PowerSide.Way> lines = side.waysOf(load).stream().filter(PowerSide.Way::line).toList();
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
    return all.stream().min((a, b) -> Double.compare(trip(a), trip(b)));
  }

  private static double trip(Part.Protective device) {
    return device.trip().map(t -> t.value().high()).orElse(Double.POSITIVE_INFINITY);
  }
}
