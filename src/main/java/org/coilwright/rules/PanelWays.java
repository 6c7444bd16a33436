package org.coilwright.rules;

import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.Queue;
import java.util.Set;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Method;
import org.coilwright.netlist.Run;
import org.coilwright.netlist.Written;
import org.jspecify.annotations.Nullable;

/** How far parts lie apart by the wires of the panel: its own wires tell how near they stand. */
final class PanelWays {
  private final Map<String, Map<String, Double>> metres = new HashMap<>();

  PanelWays(Circuit circuit) {
    for (Conductor wire : circuit.branches(Conductor.class)) {
      if (isInPanel(wire) && wire.length().isPresent()) {
        join(part(wire.from()), part(wire.to()), wire.length().getAsDouble());
        join(part(wire.to()), part(wire.from()), wire.length().getAsDouble());
      }
    }
  }

  private void join(String one, String other, double length) {
    metres.computeIfAbsent(one, k -> new HashMap<>()).merge(other, length, Math::min);
  }

  /** True for a wire whose run is said to lie in the panel. */
  static boolean isInPanel(Conductor wire) {
    return wire.run()
        .flatMap(Run::installed)
        .map(Written::value)
        .filter(Method.PANEL::equals)
        .isPresent();
  }

  /** The part a wire's end belongs to. */
  static String part(Node end) {
    return end.terminals().get(0).part();
  }

  /**
   * Metres of the shortest way through the panel; empty if its wires do not join the two on a way
   * of at most so many metres.
   */
  Optional<Double> between(String one, String other, double most) {
    if (!metres.containsKey(one) || !metres.containsKey(other)) {
      return Optional.empty();
    }
    record Step(String part, double metres) {}
    Queue<Step> open = new PriorityQueue<>(Comparator.comparingDouble(Step::metres));
    Set<String> done = new HashSet<>();
    open.add(new Step(one, 0));
    for (@Nullable Step step = open.poll(); step != null; step = open.poll()) {
      if (step.part().equals(other)) {
        return Optional.of(step.metres());
      }
      if (step.metres() <= most && done.add(step.part())) {
        double so = step.metres();
        metres
            .getOrDefault(step.part(), Map.of())
            .forEach((next, length) -> open.add(new Step(next, so + length)));
      }
    }
    return Optional.empty();
  }
}
