package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.circuit.Branch.DiodeBranch;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Terminal;
import org.coilwright.quantity.CurrentKind;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rewiring;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/**
 * A diode across a DC coil conducts while the coil is on. The short-circuit that follows is its
 * consequence: turning the diode cures both, so this finding speaks and that one is silent.
 */
final class SuppressionReversed implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("suppression.reversed", Weight.STOP, "diode the wrong way round")
          .what(
              "Follows wires and contacts from a DC coil to its supply. The cathode (K, the ring)"
                  + " of a diode across the coil must lie on the end that gets plus.")
          .why(
              "The moment the contact closes, the diode shorts the supply: the diode, the contact"
                  + " or the supply fails, and the coil does not pull in.")
          .remedy("Turn the diode: cathode (the ring) to the coil end that gets plus.")
          .blind(
              "A diode that is drawn right and fitted wrong. One that is built in: coil.reversed"
                  + " looks at that.")
          .sources("circuit-theory", "relay-application-notes")
          .consequenceOf("coil.reversed", "coil.wrong-current-kind");

  private final Cited<Double> tolerance;
  private final Basis basis;

  SuppressionReversed(Tables tables) {
    tolerance = tables.figure("coil.resistance-tolerance");
    basis = Basis.of(FACTS, tables, Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    List<Outcome> outcomes = new ArrayList<>();
    CoilWiring wiring = CoilWiring.of(study, tolerance.value());
    for (FedCoil feed : wiring.fed()) {
      if (feed.kind() == CurrentKind.DC && !feed.sources().isEmpty()) {
        wiring
            .across(feed.coil())
            .diodes()
            .forEach(diode -> outcomes.add(check(wiring, feed, diode)));
      }
    }
    return outcomes;
  }

  private Outcome check(CoilWiring wiring, FedCoil feed, DiodeBranch diode) {
    String coil = feed.coil().part();
    Subject subject = Subject.of(FACTS, diode.mark(), diode.part(), coil);
    Optional<Node> plus = feed.plusEnd();
    if (plus.isEmpty()) {
      return subject.undecided(
          "a fixed polarity at " + coil,
          "Contacts can turn the polarity at %s, so %s conducts in one of the two positions or the path is not what it seems."
              .formatted(coil, diode.part()));
    }
    Node minus = feed.otherThan(plus.get());
    if (!wiring.wires().joined(plus.get(), diode.from())) {
      return subject.satisfied(
          "%s blocks while %s is on: its cathode lies on %s, which gets plus."
              .formatted(diode.part(), coil, plus.get()),
          basis);
    }
    return subject
        .violated(
            "%s shorts %s".formatted(diode.part(), coil),
            "%s.A lies on %s, which gets plus, and %s.K on %s: the diode conducts while %s is on."
                .formatted(diode.part(), plus.get(), diode.part(), minus, coil),
            "conducts from A to K")
        .alsoAt(
            wireTo(wiring.circuit(), diode).orElse(feed.coil().mark()), "brings plus to the anode")
        .alsoAt(feed.coil().mark(), "gets plus at " + plus.get())
        .change(
            Rewiring.exchanged(
                wiring.circuit().netlist(),
                new Terminal(diode.part(), "A"),
                new Terminal(diode.part(), "K")))
        .todo(
            "Turn %s: K (the ring) to %s, A to %s.".formatted(diode.part(), plus.get(), minus),
            basis);
  }

  private static Optional<Mark> wireTo(Circuit circuit, DiodeBranch diode) {
    return diode.from().terminals().stream()
        .flatMap(t -> circuit.wiresAt(t).stream())
        .map(w -> w.mark())
        .findFirst();
  }
}
