package org.coilwright.rules;

import java.util.List;
import java.util.stream.Collectors;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.quantity.Printed;
import org.coilwright.solve.State;
import org.coilwright.solve.Study;

/** Why a load is on or off in a state, in words. */
final class LoadTrail {
  private LoadTrail() {}

  /** {@code Fed by: G0.L → F1.2 → E1.1. } */
  static String fedBy(Study study, String load, State state) {
    Circuit circuit = study.circuit();
    return Feeding.in(study, state).at(load).ways(circuit, Feeding.closed(study, state)).stream()
        .map(Path::inWords)
        .collect(Collectors.joining("; ", "Fed by: ", ". "));
  }

  /** {@code Open in its way: K1.11-14. } */
  static String openBefore(Study study, String load, State state) {
    Circuit circuit = study.circuit();
    PinFeeds whole = Feeding.whole(study).at(load);
    if (!whole.free().isEmpty()) {
      return "Nothing leads to %s. "
          .formatted(whole.free().stream().map(Node::name).collect(Collectors.joining(", ")));
    }
    String open =
        whole.ways(circuit, branch -> true).stream()
            .flatMap(way -> way.branches().stream())
            .filter(branch -> !Feeding.closed(study, state).test(branch))
            .map(Branch::id)
            .distinct()
            .collect(Collectors.joining(", "));
    return open.isEmpty() ? "" : "Open in its way: %s. ".formatted(open);
  }

  /** Each of some relays, in or out, and what its coil gets. */
  static String relays(Study study, List<String> relays, State state) {
    return relays.stream()
        .map(relay -> relay(study, relay, state.isIn(relay), state))
        .collect(Collectors.joining("; ", "", relays.isEmpty() ? "" : "."));
  }

  private static String relay(Study study, String relay, boolean in, State state) {
    String volts = Printed.volts(Math.abs(study.coil(relay, state).volts()));
    return "%s is %s, its coil gets %s".formatted(relay, in ? "in" : "out", volts);
  }
}
