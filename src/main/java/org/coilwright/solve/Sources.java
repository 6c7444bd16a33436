package org.coilwright.solve;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Circuit.Island;
import org.coilwright.circuit.Node;
import org.coilwright.quantity.Quantity;
import org.coilwright.solve.Reference.Leg;

/** What sources give, and which potentials follow from them alone. */
final class Sources {
  private final Circuit circuit;
  private final Variables variables;
  private final Map<Source, Quantity> stands = new HashMap<>();
  private final List<String> assumed = new ArrayList<>();

  Sources(Circuit circuit, Variables variables) {
    this.circuit = circuit;
    this.variables = variables;
    for (Source source : circuit.branches(Source.class)) {
      stands.put(source, source.volts().orElseGet(() -> assume(source)));
    }
  }

  /**
   * A voltage that is not written is taken from the first coil or load that the source could drive,
   * so that the positions of the armatures can be told at all. Whoever compares volts asks first
   * whether they are written.
   */
  private Quantity assume(Source source) {
    assumed.add(source.id());
    OptionalDouble rated =
        circuit.islandOf(source.to()).branches().stream()
            .flatMapToDouble(
                b ->
                    b instanceof Branch.Coil coil
                        ? java.util.stream.DoubleStream.of(coil.spec().voltage().value().nominal())
                        : b instanceof Branch.LoadElement load && load.ratedVolts().isPresent()
                            ? java.util.stream.DoubleStream.of(load.ratedVolts().getAsDouble())
                            : java.util.stream.DoubleStream.empty())
            .findFirst();
    return Quantity.of(rated.orElse(0), org.coilwright.quantity.Dimension.VOLTAGE);
  }

  /** Ids of sources whose voltage is not written. */
  List<String> assumed() {
    return assumed;
  }

  /** Volts at a corner; AC r.m.s. */
  double volts(Source source, Level level) {
    Quantity stated = stands.getOrDefault(source, NOTHING);
    return switch (level) {
      case NOMINAL -> stated.nominal();
      case LOW -> stated.low();
      case HIGH -> stated.high();
    };
  }

  private static final Quantity NOTHING = Quantity.of(0, org.coilwright.quantity.Dimension.VOLTAGE);

  double re(Source source, Level level) {
    return source.isDirect()
        ? volts(source, level)
        : volts(source, level) * cos(source.phaseDegrees().orElse(0));
  }

  double im(Source source, Level level) {
    int degrees = source.phaseDegrees().orElse(0);
    return source.isDirect() || degrees % 180 == 0
        ? 0
        : volts(source, level) * Math.sin(Math.toRadians(degrees));
  }

  /** Half turns give exact numbers, so that split-phase circuits stay real. */
  private static double cos(int degrees) {
    return degrees % 180 == 0 ? (degrees % 360 == 0 ? 1 : -1) : Math.cos(Math.toRadians(degrees));
  }

  /**
   * The known potentials of an island: those of the mains, else of a direct source that is always
   * live or alone; else only the first source's minus.
   */
  Reference reference(Island island, Alteration alteration) {
    List<Source> all =
        island.sources().stream().filter(s -> !alteration.gone().contains(s)).toList();
    if (all.isEmpty()) {
      return new Reference(Map.of(), List.of(), List.of());
    }
    Optional<Source> first =
        all.stream()
            .filter(s -> !s.isDirect())
            .findFirst()
            .or(() -> all.stream().filter(s -> variables.ofSource(s) < 0).findFirst())
            .or(() -> all.size() == 1 ? Optional.of(all.get(0)) : Optional.empty());
    if (first.isEmpty()) {
      return new Reference(Map.of(all.get(0).from(), List.of()), List.of(), all);
    }
    return tree(first.get(), all);
  }

  private Reference tree(Source first, List<Source> all) {
    Map<Node, List<Leg>> ways = new HashMap<>();
    ways.put(first.from(), List.of());
    List<Source> held = new ArrayList<>();
    boolean grown = true;
    while (grown) {
      grown = false;
      for (Source source : all) {
        boolean same = source.equals(first) || variables.ofSource(source) < 0;
        if (!same || held.contains(source)) {
          continue;
        }
        List<Leg> from = ways.get(source.from());
        List<Leg> to = ways.get(source.to());
        if (from != null && to == null) {
          ways.put(source.to(), and(from, new Leg(source, 1)));
        } else if (from == null && to != null) {
          ways.put(source.from(), and(to, new Leg(source, -1)));
        } else {
          continue;
        }
        held.add(source);
        grown = true;
      }
    }
    return new Reference(ways, held, all);
  }

  private static List<Leg> and(List<Leg> way, Leg leg) {
    List<Leg> longer = new ArrayList<>(way);
    longer.add(leg);
    return List.copyOf(longer);
  }
}
