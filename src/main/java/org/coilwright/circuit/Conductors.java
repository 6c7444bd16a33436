package org.coilwright.circuit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Run;
import org.coilwright.netlist.Wire;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.ConductorSize;

/** Wires with their run's defaults applied. */
final class Conductors {
  /** What a bridge between neighbouring clamps is taken as: the format says so. */
  private static final double BRIDGE_METRES = 0.2;

  private Conductors() {}

  static List<Branch> of(Netlist netlist, Terminals terminals) {
    Optional<ConductorSize> smallest = smallestInUse(netlist);
    List<Branch> conductors = new ArrayList<>();
    int number = 0;
    for (Wire wire : netlist.wires()) {
      number++;
      Optional<Run> run = runOf(netlist, wire);
      boolean bridge = wire.run().isEmpty() && wire.length().isEmpty();
      Optional<ConductorSize> size = sizeOf(netlist, wire);
      OptionalDouble length =
          bridge
              ? OptionalDouble.of(BRIDGE_METRES)
              : wire.length().or(() -> run.flatMap(Run::length)).stream()
                  .mapToDouble(l -> l.value().nominal())
                  .findFirst();
      conductors.add(
          new Branch.Conductor(
              "wire " + number,
              terminals.at(wire.from().value()),
              terminals.at(wire.to().value()),
              wire.mark(),
              wire,
              run,
              bridge ? size.or(() -> smallest) : size,
              length,
              wire.insulation().or(() -> run.flatMap(Run::insulation)).map(Written::value),
              bridge));
    }
    return conductors;
  }

  private static Optional<ConductorSize> smallestInUse(Netlist netlist) {
    return netlist.wires().stream()
        .flatMap(wire -> sizeOf(netlist, wire).stream())
        .flatMap(Stream::of)
        .min(Comparator.comparingDouble(ConductorSize::mm2));
  }

  private static Optional<ConductorSize> sizeOf(Netlist netlist, Wire wire) {
    return wire.size().or(() -> runOf(netlist, wire).flatMap(Run::size)).map(Written::value);
  }

  private static Optional<Run> runOf(Netlist netlist, Wire wire) {
    return wire.run().flatMap(r -> Optional.ofNullable(netlist.runs().get(r.value())));
  }
}
