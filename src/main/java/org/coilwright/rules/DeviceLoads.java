package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Predicate;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.sizing.Guards;
import org.coilwright.sizing.LoadCurrent;
import org.coilwright.sizing.Overcurrent;
import org.coilwright.sizing.PowerSide;
import org.coilwright.sizing.PowerSide.Demand;
import org.coilwright.table.Tables;

/** What protective devices carry for loads, and which overcurrent devices stand behind one. */
final class DeviceLoads {
  private DeviceLoads() {}

  /** Of every admitted device on the mains the pole that carries most, in the order of the ways. */
  static Map<Part, Branch> heaviest(PowerSide side, Predicate<Part> admitted) {
    Map<Part, Branch> heaviest = new LinkedHashMap<>();
    for (Branch branch : side.branches()) {
      Optional<Part> device = device(side.circuit(), branch).filter(admitted);
      if (device.isPresent() && side.loadsThrough(branch).stream().allMatch(side::isOnMains)) {
        Branch known = heaviest.get(device.get());
        if (known == null || worst(side, branch) > worst(side, known)) {
          heaviest.put(device.get(), branch);
        }
      }
    }
    return heaviest;
  }

  /** The fuse, breaker or residual-current device whose line a branch is; of the last any pole. */
  private static Optional<Part> device(Circuit circuit, Branch branch) {
    return branch instanceof Contact contact
        ? Optional.ofNullable(circuit.netlist().parts().get(contact.part()))
            .filter(
                p ->
                    p instanceof Part.Fuse
                        || (p instanceof Part.Protective d
                            && (d.isRcd() || !contact.neutralPole())))
        : Optional.empty();
  }

  private static double worst(PowerSide side, Branch branch) {
    return side.demand(branch).map(Demand::worst).orElse(0.0);
  }

  /**
   * The least rating with which a device carries its loads, A, in air that takes nothing off it; 0
   * where it carries none that are known.
   */
  static double leastRating(PowerSide side, Part device, Tables tables) {
    Optional<Demand> demand =
        Optional.ofNullable(heaviest(side, device::equals).get(device)).flatMap(side::demand);
    if (demand.isEmpty()) {
      return 0;
    }
    double nominal = demand.get().nominal();
    if (side.circuit().netlist().site().practice().value() == Site.Practice.NEC) {
      return nominal * tables.figure("sizing.continuous-load").value();
    }
    return device instanceof Part.Fuse
        ? nominal
        : Overcurrent.surelyHolds(device, Site.Practice.IEC, tables)
            .map(holds -> Math.max(nominal, demand.get().worst() / holds.value()))
            .orElse(nominal);
  }

  /** The key that gives the current of the load whose is not known, of those on a branch. */
  static String unknown(PowerSide side, List<Part> loads) {
    return loads.stream()
        .filter(l -> side.current(l).isEmpty())
        .map(LoadCurrent::missing)
        .findFirst()
        .orElse(LoadCurrent.missing(loads.get(0)));
  }

  /**
   * What the first overcurrent devices behind a pole let through together, A; empty if something
   * hangs there without one, or a rating is not written.
   */
  static OptionalDouble behind(Circuit circuit, Contact pole) {
    Node start = pole.to();
    Set<Node> bare =
        circuit.reach(
            start,
            b -> PowerSide.isWay(b) && !b.equals(pole) && Overcurrent.device(circuit, b).isEmpty());
    Set<Part> devices = new LinkedHashSet<>();
    for (Node node : bare) {
      for (Branch branch : circuit.branchesAt(node)) {
        Optional<Part> device = Overcurrent.device(circuit, branch);
        device.ifPresent(devices::add);
        if (device.isEmpty() && !PowerSide.isWay(branch)) {
          return OptionalDouble.empty();
        }
      }
    }
    return devices.isEmpty() ? OptionalDouble.empty() : Guards.together(new ArrayList<>(devices));
  }
}
