package org.coilwright.solve;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Circuit;

/**
 * Relays and loads that feel a fault which is not in their own circuit: it drives a supply of
 * limited current to its limit, and what else hangs on that supply loses its voltage with it.
 */
final class Starved {
  /** Where more hang on one supply, only those are looked at that could turn something on. */
  private static final int FEW = 8;

  private final Model whole;
  private final Map<Source, Map<Group, Double>> most = new HashMap<>();

  Starved(Model whole) {
    this.whole = whole;
  }

  /**
   * The groups that a fault starves.
   *
   * @param broken the circuit with the fault in it
   * @param affected the groups that were looked at already
   */
  Set<Group> by(Model broken, Collection<Group> affected) {
    Set<Source> limited = new LinkedHashSet<>();
    broken.explorations.keySet().forEach(g -> limited.addAll(g.limited));
    Set<Group> starved = new LinkedHashSet<>();
    for (Source source : limited) {
      Set<Group> others = new LinkedHashSet<>(whole.fedBy(source));
      others.removeAll(affected);
      double rest = others.stream().mapToDouble(g -> mostAmps(source, g)).sum();
      double limit = source.limitAmps().orElse(Double.POSITIVE_INFINITY);
      if (!others.isEmpty() && asked(broken, source) + rest > limit) {
        boolean few = others.size() <= FEW;
        others.stream().filter(g -> few || closesOnRelease(g)).forEach(starved::add);
      }
    }
    return starved;
  }

  /** What all others on the sources of some groups draw at most, A. */
  Map<Source, Double> drawnBeside(Set<Group> groups) {
    Map<Source, Double> drawn = new HashMap<>();
    for (Group group : groups) {
      for (Source source : group.limited) {
        drawn.put(
            source,
            whole.fedBy(source).stream()
                .filter(g -> !groups.contains(g))
                .mapToDouble(g -> mostAmps(source, g))
                .sum());
      }
    }
    return drawn;
  }

  /** A case with what the fault does to the loads of one more group. */
  static FaultCase with(FaultCase first, Group other, FaultCase both) {
    Set<String> own =
        other.zones.stream()
            .flatMap(z -> z.loads().stream())
            .map(e -> e.branch().part())
            .collect(Collectors.toSet());
    Set<LoadEffect> effects = new LinkedHashSet<>(first.effects());
    both.effects().stream().filter(e -> own.contains(e.load())).forEach(effects::add);
    List<LoadEffect> sorted = new ArrayList<>(effects);
    sorted.sort(Comparator.comparing(LoadEffect::effect));
    Set<String> shorted = new LinkedHashSet<>(first.shorted());
    shorted.addAll(both.shorted());
    return new FaultCase(
        first.fault(),
        List.copyOf(sorted),
        List.copyOf(shorted),
        first.crossing(),
        first.explored() && both.explored());
  }

  /** True if a contact in it that is wired closes when its relay lets go. */
  private boolean closesOnRelease(Group group) {
    return group.zones.stream()
        .flatMap(z -> z.elements.stream())
        .anyMatch(
            e ->
                e.kind() == Element.Kind.CONTACT
                    && e.variable() >= group.all.firstRelay()
                    && !e.conductsWhen()
                    && isWired(e));
  }

  private boolean isWired(Element element) {
    Circuit circuit = whole.setup.circuit;
    return circuit.branchesAt(element.branch().from()).size() > 1
        && circuit.branchesAt(element.branch().to()).size() > 1;
  }

  /** What a source would have to give in some position if it kept its voltage, A. */
  private static double asked(Model broken, Source source) {
    double sum = 0;
    for (Exploration exploration : broken.explorations.values()) {
      double own = 0;
      if (exploration.group.limited.contains(source)) {
        for (List<BitSet> steady : exploration.steady.values()) {
          for (BitSet bits : steady) {
            double[] amps = exploration.group.situation(bits).asked(source, Corner.HEAVIEST.held());
            own = Math.max(own, Math.hypot(amps[0], Math.hypot(amps[1], amps[2])));
          }
        }
      }
      sum += own;
    }
    return sum;
  }

  private double mostAmps(Source source, Group group) {
    return most.computeIfAbsent(source, s -> new HashMap<>())
        .computeIfAbsent(group, g -> Groups.mostAmps(g, source));
  }
}
