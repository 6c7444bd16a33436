package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.coilwright.circuit.Actuator;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.rules.Feeding.Side;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A controller or a supply unit gets no mains in any position. */
final class SupplyUnfed implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("supply.unfed", Weight.STOP, "supply without mains")
          .what(
              "For each controller and supply unit that something is wired to, follows wires and"
                  + " contacts from its mains input and wants two different sides of one source at"
                  + " its two pins in some position of the contacts. A main switch ahead of it may"
                  + " be open in others.")
          .why(
              "It gives no voltage and moves no contact: what hangs on it does nothing, however"
                  + " rightly it is wired.")
          .remedy("Bring a line and the neutral to the two pins of the input.")
          .blind("An input that is not drawn, and one that is fed through a load or a resistor.")
          .sources("circuit-theory")
          .consequenceOf("wiring.self-joined", "wiring.short-circuit", "separation.mains-meets-elv")
          .carriedBy("wiring.loose-end")
          .meansWiredOtherwise();

  private final Basis basis;

  SupplyUnfed(Tables tables) {
    basis = Basis.of(FACTS, tables, Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    List<Outcome> outcomes = new ArrayList<>();
    for (SupplyInput input : SupplyInput.all(study)) {
      if (SupplyInput.isUsed(study, input.part())) {
        outcomes.add(judge(study, input));
      }
    }
    for (Part part : study.circuit().netlist().parts().values()) {
      boolean needs = part instanceof Part.Controller || part instanceof Part.DcSupply;
      if (needs && Part.inputOf(part).isEmpty() && SupplyInput.isUsed(study, part)) {
        outcomes.add(
            Subject.of(FACTS, part.head().mark(), part.name())
                .undecided(
                    "%s of %s".formatted(SupplyInput.key(part), part.name()),
                    "Where %s takes its own current is not written, so whether it gets any is open."
                        .formatted(part.name())));
      }
    }
    return outcomes;
  }

  private Outcome judge(Study study, SupplyInput input) {
    String name = input.part().name();
    Subject subject = Subject.of(FACTS, input.input().mark(), name);
    if (!input.feeds().isEmpty()) {
      SupplyInput.Feed feed = input.feeds().get(0);
      return subject.satisfied(
          "%s gets its current from %s and %s.".formatted(name, feed.one(), feed.other()), basis);
    }
    List<Outcome> gaps = Troubles.unexplored(FACTS, study);
    boolean neverClosed = isWayed(study, input);
    return neverClosed && !gaps.isEmpty() ? gaps.get(0) : unfed(study, input, neverClosed);
  }

  /** True if closed contacts would feed it, only that they never close together. */
  private static boolean isWayed(Study study, SupplyInput input) {
    Feeding whole = Feeding.whole(study);
    Set<Side> one = whole.at(input.pins().get(0));
    Set<Side> other = whole.at(input.pins().get(1));
    return !one.isEmpty() && !other.isEmpty() && !(one.size() == 1 && one.equals(other));
  }

  private Outcome unfed(Study study, SupplyInput input, boolean neverClosed) {
    String name = input.part().name();
    List<String> relays = input.relays(study);
    Set<String> at = new LinkedHashSet<>(List.of(name));
    Feeding whole = Feeding.whole(study);
    input.pins().stream()
        .filter(pin -> whole.at(pin).isEmpty())
        .forEach(
            pin -> {
              at.add(pin.name());
              at.addAll(DeadEnds.of(study.circuit(), pin));
            });
    at.addAll(relays);
    String idle =
        relays.isEmpty()
            ? ""
            : " %s on it and cannot pull in."
                .formatted(
                    relays.size() == 1
                        ? relays.get(0) + " hangs"
                        : String.join(", ", relays) + " hang");
    Subject.Finding finding =
        new Subject(FACTS, input.input().mark(), List.copyOf(at))
            .violated(
                "%s gets no mains".formatted(name),
                why(study, input, whole, neverClosed) + idle,
                "no current gets in here");
    return shown(study, input, finding, neverClosed)
        .todo(
            neverClosed
                ? "See which of these contacts has the wrong form (NO or NC), or feed %s from ahead of them."
                    .formatted(name)
                : "Wire one of %s and %s to a line and the other to the neutral, as the device is marked."
                    .formatted(input.pins().get(0), input.pins().get(1)),
            basis);
  }

  private static String why(Study study, SupplyInput input, Feeding whole, boolean neverClosed) {
    List<Node> free = input.pins().stream().filter(p -> whole.at(p).isEmpty()).toList();
    if (free.size() > 1) {
      return "Neither %s nor %s leads to any source.%s%s"
          .formatted(
              free.get(0),
              free.get(1),
              WayBack.of(study.circuit(), free.get(0)),
              WayBack.of(study.circuit(), free.get(1)));
    } else if (!free.isEmpty()) {
      return "%s leads to no source, with every contact closed.%s"
          .formatted(free.get(0), WayBack.of(study.circuit(), free.get(0)));
    } else if (!neverClosed) {
      Side side = whole.at(input.pins().get(0)).iterator().next();
      return "Both its pins lead to %s: there is no voltage between them.%s"
          .formatted(
              side,
              WayBack.both(study.circuit(), side.node(), input.pins().get(0), input.pins().get(1)));
    }
    String contacts =
        contacts(study.circuit(), input, whole).stream()
            .map(Branch::id)
            .collect(Collectors.joining(" and "));
    return contacts.isEmpty()
        ? "Its pins lie on two sources that have nothing to do with one another."
        : "No position closes %s together: %s."
            .formatted(
                contacts,
                input.pins().stream()
                    .flatMap(pin -> way(study.circuit(), whole, pin).stream())
                    .map(Path::inWords)
                    .collect(Collectors.joining("; ")));
  }

  private static Subject.Finding shown(
      Study study, SupplyInput input, Subject.Finding finding, boolean neverClosed) {
    if (neverClosed) {
      contacts(study.circuit(), input, Feeding.whole(study))
          .forEach(c -> finding.alsoAt(c.mark(), c.id() + " is in its way"));
    }
    study.circuit().netlist().parts().values().stream()
        .filter(Part.Mains.class::isInstance)
        .findFirst()
        .ifPresent(mains -> finding.alsoAt(mains.head().mark(), "the mains start here"));
    return finding;
  }

  /** The contacts in the shortest ways to its two pins. */
  private static List<Contact> contacts(Circuit circuit, SupplyInput input, Feeding whole) {
    return input.pins().stream()
        .flatMap(pin -> way(circuit, whole, pin).stream())
        .flatMap(way -> way.branches().stream())
        .filter(Contact.class::isInstance)
        .map(Contact.class::cast)
        .filter(contact -> contact.actuator().kind() != Actuator.Kind.PROTECTIVE)
        .distinct()
        .toList();
  }

  private static Optional<Path> way(Circuit circuit, Feeding whole, Node pin) {
    return whole.at(pin).stream()
        .findFirst()
        .flatMap(side -> circuit.path(side.node(), pin, Feeding::isWay));
  }
}
