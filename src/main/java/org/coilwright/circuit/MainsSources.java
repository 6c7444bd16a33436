package org.coilwright.circuit;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Terminal;
import org.coilwright.quantity.Quantity;

/** The sources between the neutral and each line of an {@code is: mains} part. */
final class MainsSources {
  private static final Map<String, Integer> THREE = Map.of("L1", 0, "L2", -120, "L3", 120);
  private static final Map<String, Integer> SPLIT = Map.of("L1", 0, "L2", 180);

  private final Optional<Site.MainsSupply> supply;
  private final Terminals terminals;

  MainsSources(Optional<Site.MainsSupply> supply, Terminals terminals) {
    this.supply = supply;
    this.terminals = terminals;
  }

  List<Branch> of(Part.Mains mains) {
    if (!mains.pins().contains("N")) {
      return List.of();
    }
    Map<String, Integer> phases = mains.pins().contains("L3") ? THREE : SPLIT;
    double share =
        mains.pins().contains("L") ? 1 : mains.pins().contains("L3") ? 1 / Math.sqrt(3) : 0.5;
    return mains.pins().stream()
        .filter(pin -> pin.startsWith("L"))
        .flatMap(pin -> source(mains, pin, share, phases.getOrDefault(pin, 0)))
        .collect(Collectors.toList());
  }

  private Stream<Branch> source(Part.Mains mains, String line, double share, int degrees) {
    Optional<Quantity> volts = supply.map(s -> s.voltage().value().times(share));
    return Stream.of(
        new Branch.Source(
            mains.name() + "." + line + "-N",
            terminals.at(new Terminal(mains.name(), "N")),
            terminals.at(new Terminal(mains.name(), line)),
            mains.head().mark(),
            mains.name(),
            volts,
            OptionalDouble.empty(),
            OptionalInt.of(degrees),
            Optional.empty()));
  }
}
