package org.coilwright.rules;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Run;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Quantity;

/**
 * A run that holds extra-low voltage wires.
 *
 * @param low those wires; at least one
 * @param mains the mains wires in it and in the runs it shares its way with
 */
record SharedRun(Run run, List<Conductor> low, List<Conductor> mains) {
  /** Every such run, in the order of the netlist. */
  static List<SharedRun> all(Circuit circuit, VoltageBands bands) {
    List<SharedRun> all = new ArrayList<>();
    Map<String, Set<String>> others = new HashMap<>();
    for (Run run : circuit.netlist().runs().values()) {
      for (Written<String> other : run.sharesWith()) {
        others.computeIfAbsent(other.value(), n -> new LinkedHashSet<>()).add(run.name());
      }
    }
    for (Run run : circuit.netlist().runs().values()) {
      List<Conductor> low =
          wiresIn(circuit, Set.of(run.name())).stream()
              .filter(w -> bands.elvAt(w.from()).isPresent())
              .toList();
      if (!low.isEmpty()) {
        List<Conductor> mains =
            wiresIn(circuit, together(run, others)).stream().filter(bands::onMains).toList();
        all.add(new SharedRun(run, low, mains));
      }
    }
    return all;
  }

  /**
   * This run and every run that one of the two says it shares its way with.
   *
   * @param others by the name of a run those that say so of it
   */
  private static Set<String> together(Run run, Map<String, Set<String>> others) {
    Set<String> names = new LinkedHashSet<>(Set.of(run.name()));
    run.sharesWith().forEach(other -> names.add(other.value()));
    names.addAll(others.getOrDefault(run.name(), Set.of()));
    return names;
  }

  private static List<Conductor> wiresIn(Circuit circuit, Set<String> runs) {
    return runs.stream()
        .flatMap(run -> circuit.wiresIn(run).stream())
        .sorted(Comparator.comparingInt(circuit::place))
        .toList();
  }

  /** The mains wires in this very run, which lie against the others. */
  List<Conductor> mainsWithin() {
    return mains.stream()
        .filter(w -> w.run().map(r -> r.name().equals(run.name())).orElse(false))
        .toList();
  }

  /** True if the insulation of one of these wires is not written. */
  static boolean isUnrated(List<Conductor> wires) {
    return wires.stream().anyMatch(w -> w.insulation().isEmpty());
  }

  /** The one with the least insulation. */
  static Conductor weakest(List<Conductor> wires) {
    return wires.stream()
        .min(Comparator.comparingDouble(SharedRun::rating))
        .orElseThrow(() -> new IllegalStateException("no wire"));
  }

  /** Rated voltage of a wire's insulation between conductors, V; zero if it is not written. */
  static double rating(Conductor wire) {
    return wire.insulation().map(Quantity::low).orElse(0.0);
  }
}
