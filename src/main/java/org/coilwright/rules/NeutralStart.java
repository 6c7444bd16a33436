package org.coilwright.rules;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;

/**
 * Where the neutral of a load begins: behind the last protective device on its line's way that
 * takes the neutral through as well. Taken ahead of a residual-current device, the load's whole
 * current would be a difference to it.
 *
 * @param device designation of that device
 * @param pin its outgoing neutral
 * @param fed false if the neutral does not reach that pin yet
 */
record NeutralStart(String device, Node pin, boolean fed) {
  /** Of a load; empty if no device on its line's way has a pole for the neutral. */
  static Optional<NeutralStart> of(
      Circuit circuit, PinFeeds feeds, Optional<Feeding.Side> neutral) {
    Set<Node> reached = neutral.map(n -> circuit.reach(n.node(), Feeding::isWay)).orElse(Set.of());
    Optional<NeutralStart> start = Optional.empty();
    for (Path way : feeds.ways(circuit, branch -> true)) {
      boolean line =
          Feeding.sides(circuit).stream()
              .filter(side -> side.kind() == Feeding.Kind.LINE)
              .anyMatch(side -> side.node().equals(way.nodes().get(0)));
      for (int at = 0; line && at < way.branches().size(); at++) {
        Optional<NeutralStart> here =
            behind(circuit, way.branches().get(at), way.nodes().get(at), reached);
        if (here.isPresent() && (here.get().fed() || start.isEmpty())) {
          start = here;
        }
      }
    }
    return start;
  }

  /** Of one device, entered at {@code before}. */
  private static Optional<NeutralStart> behind(
      Circuit circuit, Branch branch, Node before, Set<Node> reached) {
    if (!(branch instanceof Contact pole)) {
      return Optional.empty();
    }
    List<Branch> poles = circuit.branchesOf(pole.part());
    boolean forwards = pole.from().equals(before);
    return poles.stream()
        .filter(Contact.class::isInstance)
        .map(Contact.class::cast)
        .filter(Contact::neutralPole)
        .map(n -> forwards ? n.to() : n.from())
        .map(out -> new NeutralStart(pole.part(), out, reached.contains(out)))
        .findFirst();
  }
}
