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
import org.jspecify.annotations.Nullable;

/** The sources between the neutral and each line of an {@code is: mains} part. */
final class MainsSources {
  private static final Map<String, Integer> THREE = Map.of("L1", 0, "L2", -120, "L3", 120);
  private static final Map<String, Integer> SPLIT = Map.of("L1", 0, "L2", 180);

  /**
   * Line-to-line to line-to-neutral voltages that go together by IEC 60038 (from memory). The
   * shorter of them is a rounded figure: 400 V / √3 is 230.9 V, yet such a network's line is called
   * 230 V, and its tolerance counts from there.
   */
  private static final Map<Integer, Integer> STANDARD_PAIRS =
      Map.of(208, 120, 380, 220, 400, 230, 415, 240, 480, 277, 690, 400);

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
    return mains.pins().stream()
        .filter(Terminal::isLine)
        .flatMap(pin -> source(mains, pin, phases.getOrDefault(pin, 0)))
        .collect(Collectors.toList());
  }

  private Stream<Branch> source(Part.Mains mains, String line, int degrees) {
    Optional<Quantity> volts = supply.map(s -> toNeutral(mains, s.voltage().value()));
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

  private static Quantity toNeutral(Part.Mains mains, Quantity written) {
    if (mains.pins().contains("L")) {
      return written;
    }
    if (!mains.pins().contains("L3")) {
      return written.times(0.5);
    }
    Quantity exact = written.times(1 / Math.sqrt(3));
    @Nullable Integer named = STANDARD_PAIRS.get((int) Math.round(written.nominal()));
    if (named == null || written.isExact()) {
      return exact;
    }
    double share = named / written.nominal();
    return new Quantity(
        written.dimension(),
        Math.min(exact.nominal(), written.low() * share),
        exact.nominal(),
        Math.max(exact.nominal(), written.high() * share),
        written.kind());
  }
}
