package org.coilwright.cli;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.netlist.Method;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Run;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.sizing.Ampacity;
import org.coilwright.sizing.Core;
import org.coilwright.sizing.Derated;
import org.coilwright.sizing.PowerSide;
import org.coilwright.sizing.PowerSide.Way;
import org.coilwright.table.Tables;

/**
 * The wires from the mains to the loads behind a contactor.
 *
 * @param metres the longest way there; empty if the length of a wire in one is not written
 * @param worst the wire that may carry least as it is laid, the longest of several alike
 */
record LoadWay(OptionalDouble metres, Optional<Conductor> worst) {
  /** One size for all, so that only how they are laid tells wires apart. */
  private static final ConductorSize PROBE = ConductorSize.ofMm2(10);

  private static final ConductorSize GAUGE_PROBE = ConductorSize.ofAwg(8);

  /** Air around wires in the box and outside of it, °C, and how many conductors are loaded. */
  record Place(double inside, double outside, int loaded, boolean nec) {}

  static LoadWay of(
      PowerSide side, String contactor, List<Part> loads, Place place, Tables tables) {
    List<Way> ways = new ArrayList<>();
    for (Part load : loads) {
      Map<String, Way> byPin = new LinkedHashMap<>();
      for (Way way : side.waysOf(load)) {
        byPin.merge(
            way.pin(), way, (a, b) -> passes(b, contactor) && !passes(a, contactor) ? b : a);
      }
      ways.addAll(byPin.values());
    }
    OptionalDouble metres = OptionalDouble.of(0);
    for (Way way : ways) {
      List<Conductor> wires = wires(way);
      metres =
          metres.isEmpty() || wires.stream().anyMatch(w -> w.length().isEmpty())
              ? OptionalDouble.empty()
              : OptionalDouble.of(
                  Math.max(
                      metres.getAsDouble(),
                      wires.stream().mapToDouble(w -> w.length().orElse(0)).sum()));
    }
    Optional<Conductor> worst =
        ways.stream()
            .flatMap(way -> wires(way).stream())
            .filter(wire -> method(wire).isPresent())
            .min(
                Comparator.comparingDouble((Conductor wire) -> carries(wire, place, tables))
                    .thenComparing(w -> w.length().orElse(0), Comparator.reverseOrder()));
    return new LoadWay(metres.stream().filter(m -> m > 0).findFirst(), worst);
  }

  /** How the worst wire is laid, as its run says. */
  Optional<Method> method() {
    return worst.flatMap(LoadWay::method);
  }

  private static Optional<Method> method(Conductor wire) {
    return wire.run().flatMap(Run::installed).map(Written::value);
  }

  private static boolean passes(Way way, String contactor) {
    return way.path().branches().stream()
        .anyMatch(b -> b instanceof Branch.Contact c && c.part().equals(contactor));
  }

  private static List<Conductor> wires(Way way) {
    return way.path().branches().stream()
        .filter(Conductor.class::isInstance)
        .map(Conductor.class::cast)
        .toList();
  }

  /** A; as good as none where the tables do not tell. */
  private static double carries(Conductor wire, Place place, Tables tables) {
    return method(wire)
        .flatMap(
            method -> {
              double air = method == Method.PANEL ? place.inside() : place.outside();
              return new Ampacity(tables)
                  .of(
                      place.nec() ? GAUGE_PROBE : PROBE,
                      new Ampacity.Laid(method, place.loaded(), air, 1, Core.of(wire)))
                  .known();
            })
        .map(Derated::amps)
        .orElse(0.0);
  }
}
