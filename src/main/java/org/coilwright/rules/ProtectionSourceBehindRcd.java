package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Written;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** An inverter, battery or generator feeds into the load side of a residual-current device. */
final class ProtectionSourceBehindRcd implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of(
              "protection.source-behind-rcd",
              Weight.FIX,
              "source on the load side of a residual-current device")
          .what(
              "Opens each residual-current device and looks whether a source (inverter, battery,"
                  + " generator) loses the mains by it: it then feeds the device from its load"
                  + " side. A NOTE where both-directions of the device is true.")
          .why(
              "The source keeps feeding a fault after the device has opened, and a device with"
                  + " electronics that is fed backwards may burn when it opens.")
          .remedy(
              "Join the source ahead of the device, or take a device that its maker states to suit"
                  + " both directions.")
          .blind(
              "Plug-in generators that nobody has drawn; how fast the inverter itself stops, which"
                  + " its maker states.")
          .sources("bs-7671-prosumers", "common-practice")
          .consequenceOf("wiring.short-circuit");

  private final Basis basis;

  ProtectionSourceBehindRcd(Tables tables) {
    basis =
        new Basis(
            List.of(tables.source("bs-7671-prosumers").cite() + ", 551.7.1(d) and 530.3.201"),
            Standing.PUBLISHED);
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
      if (part instanceof Part.Source source) {
        List<Node> joined = live(circuit, source, whole);
        if (!joined.isEmpty()) {
          outcomes.add(judge(study, source, joined));
        }
      }
    }
    return outcomes;
  }

  /** The pins of a source that a line or the neutral of the mains reaches. */
  private static List<Node> live(Circuit circuit, Part.Source source, Feeding feeding) {
    return source.pins().stream()
        .filter(pin -> !pin.equals(Earthing.PE))
        .flatMap(pin -> circuit.find(new Terminal(source.name(), pin)).stream())
        .filter(pin -> MainsConsumer.isOnMains(feeding, pin))
        .toList();
  }

  private Outcome judge(Study study, Part.Source source, List<Node> joined) {
    for (Part.Protective device : ResidualDevices.of(study.circuit())) {
      Feeding open = ResidualDevices.opened(study, device);
      List<Node> lost = joined.stream().filter(p -> !MainsConsumer.isOnMains(open, p)).toList();
      if (!lost.isEmpty()) {
        return behind(source, device, lost.get(0));
      }
    }
    return Subject.of(FACTS, source.head().mark(), source.name())
        .satisfied(
            "%s is joined to the mains through no residual-current device."
                .formatted(source.name()),
            basis);
  }

  private Outcome behind(Part.Source source, Part.Protective device, Node pin) {
    Optional<Written<Boolean>> both = device.bothDirections();
    boolean stated = both.filter(Written::value).isPresent();
    Subject.Finding finding =
        Subject.of(FACTS, source.head().mark(), source.name(), device.name())
            .violated(
                "%s feeds %s from its load side".formatted(source.name(), device.name()),
                stated
                    ? "%s is joined behind %s, which its maker states to suit both directions: a fault behind it is still fed by %s until that stops."
                        .formatted(pin, device.name(), source.name())
                    : "%s is joined behind %s: a fault there is fed on after %s has opened, and whether it may be fed backwards is not stated."
                        .formatted(pin, device.name(), device.name()),
                "a source")
            .alsoAt(
                both.map(Written::mark).orElse(device.head().mark()),
                stated ? "suits both directions" : "fed from its load side");
    if (!stated) {
      finding.change(both, "true");
      if (both.isEmpty()) {
        device
            .rating()
            .ifPresent(r -> finding.change(r.mark(), r.text() + ", both-directions: true"));
      }
    }
    return (stated ? finding.lighter(Weight.NOTE) : finding)
        .todo(
            stated
                ? "Ask the maker of %s how fast it stops when the mains is gone."
                    .formatted(source.name())
                : "Join %s ahead of %s, or take a device made for both directions and write both-directions: true."
                    .formatted(source.name(), device.name()),
            basis);
  }
}
