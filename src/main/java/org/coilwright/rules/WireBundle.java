package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Run;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Quantity;

/**
 * Wires whose insulation is judged together.
 *
 * @param name the run, or the two ends of a wire that has its own insulation or no run
 */
record WireBundle(String name, List<Conductor> wires) {
  /** Every one, in the order of the netlist. */
  static List<WireBundle> all(Circuit circuit) {
    Map<String, List<Conductor>> byName = new LinkedHashMap<>();
    for (Conductor wire : circuit.branches(Conductor.class)) {
      boolean ofRun = wire.wire().insulation().isEmpty();
      String name =
          (ofRun ? wire.run().map(Run::name) : Optional.<String>empty()).orElse(ends(wire));
      byName.computeIfAbsent(name, n -> new ArrayList<>()).add(wire);
    }
    return byName.entrySet().stream().map(e -> new WireBundle(e.getKey(), e.getValue())).toList();
  }

  /** The bundle and each of its wires: what else is said of one of them is said of the same. */
  static List<String> path(String name, List<Conductor> wires) {
    List<String> path = new ArrayList<>(List.of(name));
    wires.forEach(w -> path.add(w.id()));
    return List.copyOf(path);
  }

  /** {@code U1.4 to K1.A1}. */
  static String ends(Conductor wire) {
    return "%s to %s".formatted(wire.wire().from().value(), wire.wire().to().value());
  }

  /** The voltage it meets; empty where no source reaches, as on the protective conductor. */
  Optional<VoltageBands.Met> met(Circuit circuit, VoltageBands bands) {
    List<Conductor> live = wires.stream().filter(bands::onMains).toList();
    if (!live.isEmpty()) {
      List<Conductor> neighbours =
          wires.get(0).run().stream()
              .flatMap(run -> circuit.wiresIn(run.name()).stream())
              .filter(bands::onMains)
              .toList();
      return Optional.of(bands.met(neighbours.isEmpty() ? live : neighbours));
    }
    return wires.stream()
        .flatMap(w -> bands.elvAt(w.from()).stream())
        .flatMap(s -> s.volts().stream())
        .map(v -> new VoltageBands.Met(v.nominal(), v.high(), "that of its own supply"))
        .findFirst();
  }

  /** The extra-low voltage supply of which no voltage is written, if one reaches these wires. */
  Optional<DirectSupply> supplyWithoutVoltage(VoltageBands bands) {
    return wires.stream()
        .flatMap(w -> bands.elvAt(w.from()).stream())
        .filter(s -> s.volts().isEmpty())
        .findFirst();
  }

  /** Where its insulation is written. */
  Mark insulationMark() {
    return insulationMark(wires.get(0));
  }

  /** Where a wire's insulation is written. */
  static Mark insulationMark(Conductor wire) {
    return insulation(wire).map(Written::mark).orElse(wire.mark());
  }

  /** A wire's insulation as written, at itself or at its run. */
  static Optional<Written<Quantity>> insulation(Conductor wire) {
    return wire.wire().insulation().or(() -> wire.run().flatMap(Run::insulation));
  }
}
