package org.coilwright.rules;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Run;
import org.coilwright.solve.State;

/**
 * The line that hangs on a coil while its contact is open, and the live cores it lies beside. Only
 * a core that the open contact keeps from it can feed the coil through the capacitance between
 * them; a core on the coil's other side lies across the coil and does no harm.
 */
final class OpenLine {
  private OpenLine() {}

  /**
   * The runs in which the open line lies beside such a live core, in the position in which that is
   * longest. A run without a written length counts before any length.
   */
  static List<Run> longestBesideLive(CoilFeed feed) {
    Map<String, Run> longest = Map.of();
    for (State state : feed.idleStates()) {
      Map<String, Run> runs = besideLive(feed, state);
      if (metres(runs) > metres(longest)) {
        longest = runs;
      }
    }
    return List.copyOf(longest.values());
  }

  private static Map<String, Run> besideLive(CoilFeed feed, State state) {
    Circuit circuit = feed.study().circuit();
    Map<String, Run> beside = new LinkedHashMap<>();
    for (Path way : feed.ways()) {
      List<Source> sources = CoilFeed.sourcesOf(way);
      Source first = sources.get(0);
      Source last = sources.get(sources.size() - 1);
      Set<Node> outer = new HashSet<>(List.of(first.from(), first.to(), last.from(), last.to()));
      List<Node> ends = way.nodes().stream().filter(outer::contains).toList();
      Map<Node, Node> sides =
          Map.of(feed.coil().from(), ends.get(0), feed.coil().to(), ends.get(ends.size() - 1));
      sides.forEach(
          (coilPin, sourcePin) -> {
            Set<Node> open = joined(feed, state, coilPin);
            if (!open.contains(sourcePin)) {
              beside.putAll(common(circuit, open, joined(feed, state, sourcePin)));
            }
          });
    }
    return beside;
  }

  private static Set<Node> joined(CoilFeed feed, State state, Node from) {
    return feed.study()
        .circuit()
        .reach(
            from,
            branch ->
                branch instanceof Conductor
                    || (branch instanceof Contact c && feed.study().contact(c, state).closed()));
  }

  private static Map<String, Run> common(Circuit circuit, Set<Node> open, Set<Node> live) {
    Map<String, Run> inOpen = new LinkedHashMap<>();
    Map<String, Run> inBoth = new LinkedHashMap<>();
    for (Conductor conductor : circuit.branches(Conductor.class)) {
      if (open.contains(conductor.from())) {
        conductor.run().ifPresent(run -> inOpen.put(run.name(), run));
      }
    }
    for (Conductor conductor : circuit.branches(Conductor.class)) {
      if (live.contains(conductor.from())) {
        conductor
            .run()
            .filter(run -> inOpen.containsKey(run.name()))
            .ifPresent(run -> inBoth.put(run.name(), run));
      }
    }
    return inBoth;
  }

  private static double metres(Map<String, Run> runs) {
    return runs.values().stream()
        .mapToDouble(
            run -> run.length().map(l -> l.value().high()).orElse(Double.POSITIVE_INFINITY))
        .sum();
  }
}
