package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Change;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A line comes through one device, and its neutral returns through the pole of another. */
final class PolesNeutralBorrowed implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("poles.neutral-borrowed", Weight.STOP, "neutral borrowed from another circuit")
          .what(
              "Opens each breaker that has a neutral pole and looks, for every load, coil"
                  + " and mains input that returns through this pole, whether a line stays on it:"
                  + " none may. A neutral that no device opens, as in a circuit with a one-pole"
                  + " breaker, is well.")
          .why(
              "With that device off, all that hangs on its neutral is live through whatever"
                  + " borrowed it: who works on the circuit that is off touches the line of another"
                  + " one.")
          .remedy(
              "Return each circuit through the device that its line comes from, or from ahead of"
                  + " the neutral pole of the other.")
          .blind(
              "Neutrals joined outside this circuit; the pole of a switch. Residual-current devices"
                  + " have protection.rcd-bypassed.")
          .sources("circuit-theory", "common-practice")
          .consequenceOf("poles.neutral-only", "poles.neutral-crossed", "wiring.short-circuit");

  private final Basis basis;

  PolesNeutralBorrowed(Tables tables) {
    basis = Basis.of(FACTS, tables, Standing.COMMON_PRACTICE);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    Circuit circuit = study.circuit();
    Feeding whole = Feeding.whole(study);
    List<Outcome> outcomes = new ArrayList<>();
    for (Part part : circuit.netlist().parts().values()) {
      if (part instanceof Part.Protective device && !device.isRcd()) {
        neutralPole(circuit, device)
            .flatMap(pole -> judge(study, whole, device, pole))
            .ifPresent(outcomes::add);
      }
    }
    return outcomes;
  }

  private static Optional<Contact> neutralPole(Circuit circuit, Part device) {
    return circuit.branchesOf(device.name()).stream()
        .filter(b -> b instanceof Contact contact && contact.neutralPole())
        .map(Contact.class::cast)
        .findFirst();
  }

  private Optional<Outcome> judge(
      Study study, Feeding whole, Part.Protective device, Contact pole) {
    Feeding open = ResidualDevices.opened(study, device);
    List<MainsConsumer> behind =
        Regions.of(study).consumersThatFeel(device).stream()
            .filter(c -> c.pins().stream().anyMatch(p -> losesNeutral(whole, open, p)))
            .toList();
    if (behind.isEmpty()) {
      return Optional.empty();
    }
    List<MainsConsumer> borrowing =
        behind.stream().filter(c -> lineLeft(open, c).isPresent()).toList();
    List<String> at = new ArrayList<>(List.of(device.name()));
    (borrowing.isEmpty() ? behind : borrowing).forEach(c -> at.add(c.name()));
    Subject subject = new Subject(FACTS, device.head().mark(), at.stream().distinct().toList());
    return Optional.of(
        borrowing.isEmpty()
            ? subject.satisfied(
                "With %s open, no line stays on what returns through it: %s."
                    .formatted(device.name(), names(behind)),
                basis)
            : violated(study, subject, device, pole, open, borrowing));
  }

  private static boolean losesNeutral(Feeding whole, Feeding open, Node pin) {
    return MainsConsumer.isNeutral(whole, pin) && !MainsConsumer.isOnMains(open, pin);
  }

  private static Optional<Node> lineLeft(Feeding open, MainsConsumer consumer) {
    return consumer.pins().stream().filter(p -> MainsConsumer.isLine(open, p)).findFirst();
  }

  private Outcome violated(
      Study study,
      Subject subject,
      Part.Protective device,
      Contact pole,
      Feeding open,
      List<MainsConsumer> borrowing) {
    MainsConsumer first = borrowing.get(0);
    Node line = lineLeft(open, first).orElseThrow();
    Optional<Part> own = lineDevice(study, device, first, line);
    boolean fromIsAhead = MainsConsumer.isOnMains(open, pole.from());
    Node ahead = fromIsAhead ? pole.from() : pole.to();
    Node behind = fromIsAhead ? pole.to() : pole.from();
    String side =
        open.at(line).stream()
            .filter(s -> s.kind() == Feeding.Kind.LINE)
            .map(Feeding.Side::toString)
            .findFirst()
            .orElse("a line");
    Subject.Finding finding =
        subject
            .violated(
                "%s %s the neutral of %s"
                    .formatted(
                        names(borrowing),
                        borrowing.size() == 1 ? "borrows" : "borrow",
                        device.name()),
                "With %s open, %s stays on %s%s: %s is live through %s, and so is all that hangs on it."
                    .formatted(
                        device.name(),
                        side,
                        line.name(),
                        own.map(o -> " through " + o.name()).orElse(""),
                        end(behind, device),
                        first.name()),
                "its N is live when it is off")
            .alsoAt(first.mark(), "returns through %s".formatted(device.name()));
    own.ifPresent(o -> finding.alsoAt(o.head().mark(), "its line comes from here"));
    Terminal to =
        own.flatMap(o -> neutralBehind(study, o)).orElseGet(() -> terminal(ahead, device));
    finding.change(moved(study, device, borrowing, open, to));
    return finding.todo(
        "Return %s at %s instead of through %s.".formatted(names(borrowing), to, device.name()),
        basis);
  }

  /** The device that the line comes through, and that leaves the neutral on when it opens. */
  private static Optional<Part> lineDevice(
      Study study, Part.Protective device, MainsConsumer consumer, Node line) {
    return study.circuit().netlist().parts().values().stream()
        .filter(p -> p instanceof Part.Protective || p instanceof Part.Fuse)
        .filter(p -> !p.equals(device))
        .filter(
            p -> {
              Feeding open = ResidualDevices.opened(study, p);
              return !MainsConsumer.isOnMains(open, line)
                  && consumer.pins().stream().anyMatch(n -> MainsConsumer.isNeutral(open, n));
            })
        .findFirst();
  }

  /** The far end of its neutral pole, where the neutral reaches that through it. */
  private static Optional<Terminal> neutralBehind(Study study, Part device) {
    Feeding whole = Feeding.whole(study);
    Feeding open = ResidualDevices.opened(study, device);
    return neutralPole(study.circuit(), device).stream()
        .flatMap(pole -> List.of(pole.from(), pole.to()).stream())
        .filter(end -> losesNeutral(whole, open, end))
        .map(end -> terminal(end, device))
        .findFirst();
  }

  /** The wires that lead straight from the pole to what borrows it, put on another terminal. */
  private static List<Change> moved(
      Study study,
      Part.Protective device,
      List<MainsConsumer> borrowing,
      Feeding open,
      Terminal to) {
    Feeding whole = Feeding.whole(study);
    List<Change> changes = new ArrayList<>();
    for (MainsConsumer consumer : borrowing) {
      Optional<Mark> end =
          consumer.pins().stream()
              .filter(p -> losesNeutral(whole, open, p))
              .flatMap(p -> p.terminals().stream())
              .flatMap(t -> study.circuit().wiresAt(t).stream().map(w -> w.farEnd(t)))
              .filter(far -> far.value().part().equals(device.name()))
              .map(far -> far.mark())
              .findFirst();
      if (end.isEmpty()) {
        return List.of();
      }
      changes.add(new Change(end.get(), to.toString()));
    }
    return List.copyOf(changes);
  }

  private static String end(Node node, Part device) {
    return terminal(node, device).toString();
  }

  private static Terminal terminal(Node node, Part device) {
    return node.terminals().stream()
        .filter(t -> t.part().equals(device.name()))
        .findFirst()
        .orElseGet(() -> node.terminals().get(0));
  }

  private static String names(List<MainsConsumer> consumers) {
    return consumers.stream().map(MainsConsumer::name).distinct().collect(Collectors.joining(", "));
  }
}
