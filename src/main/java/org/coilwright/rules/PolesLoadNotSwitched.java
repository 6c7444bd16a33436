package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.coilwright.circuit.Actuator.Kind;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rewiring;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** Some path feeds the load around the contact. */
final class PolesLoadNotSwitched implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("poles.load-not-switched", Weight.STOP, "load fed around its contact")
          .what(
              "Opens every output, relay contact and switch at once, keeps protective devices,"
                  + " thermostats and cut-outs closed, and looks whether the load still has a"
                  + " complete circuit.")
          .why(
              "The load is on whatever the controller does; nothing but a thermostat or a cut-out"
                  + " stops it, if it has one.")
          .remedy("Take out the wire that leads around the contact.")
          .blind(
              "A contact that bridges another one: what a second contact does is compared with the"
                  + " intent instead.")
          .sources("circuit-theory");

  private final Basis basis;

  PolesLoadNotSwitched(Tables tables) {
    basis = Basis.of(FACTS, tables, Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    Circuit circuit = study.circuit();
    Feeding whole = Feeding.whole(study);
    Feeding rest = Feeding.of(study, PolesLoadNotSwitched::staysClosed);
    List<Outcome> outcomes = new ArrayList<>();
    for (Part load : Loads.of(circuit)) {
      if (whole.at(load.name()).areComplete()) {
        outcomes.add(checkLoad(circuit, load, rest.at(load.name())));
      }
    }
    return outcomes;
  }

  private Outcome checkLoad(Circuit circuit, Part load, PinFeeds rest) {
    String name = load.name();
    Subject subject = Subject.of(FACTS, load.head().mark(), name);
    if (!rest.areComplete()) {
      return subject.satisfied(
          "%s has no circuit with every output, relay contact and switch open.".formatted(name),
          basis);
    }
    List<Path> ways = rest.ways(circuit, PolesLoadNotSwitched::staysClosed);
    List<Conductor> bypasses =
        ways.stream().flatMap(way -> bypass(circuit, way).stream()).distinct().toList();
    if (bypasses.isEmpty() && !circuit.netlist().intent().containsKey(name)) {
      return subject.undecided(
          "intent of %s".formatted(name),
          "%s is fed without any contact, and nothing says whether one shall switch it."
              .formatted(name));
    }
    return fed(circuit, subject, name, ways, bypasses);
  }

  private Outcome fed(
      Circuit circuit, Subject subject, String name, List<Path> ways, List<Conductor> bypasses) {
    var finding =
        subject.violated(
            "%s cannot be switched off".formatted(name),
            "With every output, relay contact and switch open it is still fed: %s."
                .formatted(String.join("; ", ways.stream().map(Path::inWords).toList())),
            "stays on");
    bypasses.forEach(
        wire ->
            finding
                .alsoAt(wire.mark(), "leads around the contact")
                .change(Rewiring.without(circuit.netlist(), wire.wire())));
    String wires =
        bypasses.stream()
            .map(wire -> "from %s to %s".formatted(wire.from(), wire.to()))
            .collect(Collectors.joining(", and the one "));
    return finding.todo(
        wires.isEmpty()
            ? "Put a contact into one of these ways, or into all lines of the load."
            : "Take out the wire %s.".formatted(wires),
        basis);
  }

  /** The wire without which the way would have to pass a contact. */
  private static Optional<Conductor> bypass(Circuit circuit, Path way) {
    Node source = way.nodes().get(0);
    Node pin = way.nodes().get(way.nodes().size() - 1);
    return way.branches().stream()
        .filter(Conductor.class::isInstance)
        .map(Conductor.class::cast)
        .filter(
            wire ->
                circuit.cuts(List.of(wire), source, pin, b -> Feeding.isWay(b) && staysClosed(b))
                    && !circuit.cuts(List.of(wire), source, pin, Feeding::isWay))
        .findFirst();
  }

  private static boolean staysClosed(Branch branch) {
    return !(branch instanceof Contact contact)
        || Set.of(Kind.PROTECTIVE, Kind.THERMOSTAT, Kind.CUT_OUT)
            .contains(contact.actuator().kind());
  }
}
