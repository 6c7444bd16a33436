package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
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

/** A line lies where a device or load has its neutral. */
final class PolesNeutralCrossed implements Rule {
  private static final String NEUTRAL = "N";

  private static final RuleFacts FACTS =
      RuleFacts.of("poles.neutral-crossed", Weight.STOP, "line and neutral crossed")
          .what(
              "Looks, with each breaker or residual-current device open, what reaches its neutral"
                  + " pole, and what reaches the neutral pin of a load: only the neutral may. A"
                  + " mains input whose line pin hangs on the neutral and whose neutral pin hangs"
                  + " on a line is crossed too, and lighter; so is a pair of breakers whose"
                  + " neutrals are joined behind them.")
          .why(
              "The neutral pole does not see an overcurrent: a fault in the load is fed until"
                  + " something burns. Behind a crossed pair what is switched off stays live.")
          .remedy("Exchange line and neutral at the device.")
          .blind("Which of two wires in the wall is the line: only a measurement tells.")
          .sources("iec-60364-4-43", "circuit-theory")
          .consequenceOf("wiring.short-circuit")
          .meansWiredOtherwise();

  private final Basis basis;

  PolesNeutralCrossed(Tables tables) {
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
    Regions regions = Regions.of(study);
    List<Outcome> outcomes = new ArrayList<>();
    SharedNeutral.all(study).forEach(pair -> outcomes.add(pair.outcome(FACTS, basis)));
    for (Part part : circuit.netlist().parts().values()) {
      if (part instanceof Part.Protective device) {
        pole(study, device, regions, whole).ifPresent(outcomes::add);
      } else if (part instanceof Part.Heater || part instanceof Part.OtherLoad) {
        circuit
            .find(new Terminal(part.name(), NEUTRAL))
            .flatMap(pin -> pin(circuit, part, pin, whole))
            .ifPresent(outcomes::add);
      }
    }
    for (MainsConsumer consumer : regions.consumers()) {
      Part part = circuit.netlist().parts().get(consumer.name());
      if (part instanceof Part.Controller || part instanceof Part.DcSupply) {
        input(circuit, consumer, part, whole).ifPresent(outcomes::add);
      }
    }
    return outcomes;
  }

  private Optional<Outcome> pole(
      Study study, Part.Protective device, Regions regions, Feeding whole) {
    Circuit circuit = study.circuit();
    Set<Node> ends = new LinkedHashSet<>();
    for (Branch branch : circuit.branchesOf(device.name())) {
      if (branch instanceof Contact contact && contact.neutralPole()) {
        ends.add(contact.from());
        ends.add(contact.to());
      }
    }
    Feeding open =
        Feeding.of(study, b -> !(b instanceof Contact c && c.part().equals(device.name())));
    Optional<Node> onLine = ends.stream().filter(e -> MainsConsumer.isLine(open, e)).findFirst();
    boolean fed = ends.stream().anyMatch(e -> MainsConsumer.isOnMains(open, e));
    if (!fed) {
      return Optional.empty();
    }
    List<String> at = new ArrayList<>(List.of(device.name()));
    regions.consumersThatFeel(device).stream()
        .filter(c -> c.pins().stream().anyMatch(p -> loses(whole, open, p)))
        .forEach(c -> at.add(c.name()));
    // whatever switches behind it has line and neutral crossed as well
    regions.contactsThatFeel(device).stream()
        .filter(c -> !at.contains(c.part()))
        .filter(c -> loses(whole, open, c.from()) || loses(whole, open, c.to()))
        .forEach(c -> at.add(c.part()));
    Subject subject = new Subject(FACTS, device.head().mark(), at.stream().distinct().toList());
    if (onLine.isEmpty()) {
      return Optional.of(
          subject.satisfied(
              "Only the neutral reaches the neutral pole of %s.".formatted(device.name()), basis));
    }
    return Optional.of(
        subject
            .violated(
                "a line lies on the neutral pole of %s".formatted(device.name()),
                "%s reaches %s, which belongs to the neutral."
                    .formatted(lineAt(open, onLine.get()), terminal(onLine.get(), device)),
                "its N carries a line")
            .alsoAt(wireAt(circuit, onLine.get(), device), "brings the line there")
            .todo(
                "Exchange line and neutral on the mains side of %s.".formatted(device.name()),
                basis));
  }

  private static boolean loses(Feeding whole, Feeding open, Node pin) {
    return MainsConsumer.isOnMains(whole, pin) && !MainsConsumer.isOnMains(open, pin);
  }

  private Optional<Outcome> pin(Circuit circuit, Part load, Node pin, Feeding whole) {
    if (!MainsConsumer.isOnMains(whole, pin)) {
      return Optional.empty();
    }
    Subject subject = Subject.of(FACTS, load.head().mark(), load.name());
    if (!MainsConsumer.isLine(whole, pin)) {
      return Optional.of(
          subject.satisfied(
              "Only the neutral reaches the neutral pin of %s.".formatted(load.name()), basis));
    }
    return Optional.of(
        subject
            .violated(
                "a line lies on the neutral pin of %s".formatted(load.name()),
                "%s reaches %s.%s, which belongs to the neutral: its elements get the wrong voltages."
                    .formatted(lineAt(whole, pin), load.name(), NEUTRAL),
                "its N carries a line")
            .alsoAt(wireAt(circuit, pin, load), "brings the line there")
            .todo("Exchange the wires at %s.".formatted(load.name()), basis));
  }

  private Optional<Outcome> input(
      Circuit circuit, MainsConsumer consumer, Part part, Feeding whole) {
    if (consumer.fed(whole).size() < 2) {
      return Optional.empty();
    }
    Subject subject = Subject.of(FACTS, consumer.mark(), consumer.name());
    Node line = consumer.pins().get(0);
    Node neutral = consumer.pins().get(1);
    if (!MainsConsumer.isNeutral(whole, line) || !MainsConsumer.isLine(whole, neutral)) {
      return Optional.of(
          subject.satisfied(
              "Line and neutral of %s are not crossed.".formatted(consumer.name()), basis));
    }
    return Optional.of(
        subject
            .violated(
                "line and neutral of %s are crossed".formatted(consumer.name()),
                "%s reaches its neutral pin, and the neutral its line pin."
                    .formatted(lineAt(whole, neutral)),
                "L and N in this order")
            .alsoAt(part.head().mark(), "crossed")
            .lighter(Weight.FIX)
            .change(
                Rewiring.exchanged(
                    circuit.netlist(), line.terminals().get(0), neutral.terminals().get(0)))
            .todo("Exchange the two wires at %s.".formatted(consumer.name()), basis));
  }

  private static String lineAt(Feeding feeding, Node node) {
    return feeding.at(node).stream()
        .filter(side -> side.kind() == Feeding.Kind.LINE)
        .map(Feeding.Side::toString)
        .findFirst()
        .orElse("A line");
  }

  private static String terminal(Node node, Part device) {
    return node.terminals().stream()
        .filter(t -> t.part().equals(device.name()))
        .map(Terminal::toString)
        .findFirst()
        .orElse(node.name());
  }

  private static Mark wireAt(Circuit circuit, Node node, Part device) {
    return circuit.branchesAt(node).stream()
        .filter(b -> !b.part().equals(device.name()))
        .map(Branch::mark)
        .findFirst()
        .orElse(device.head().mark());
  }
}
