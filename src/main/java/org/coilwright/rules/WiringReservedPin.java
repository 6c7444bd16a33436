package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.coilwright.netlist.Part.Controller;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Wire;
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

/** A wire lands on a pin that the device keeps for something else. */
final class WiringReservedPin implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("wiring.reserved-pin", Weight.STOP, "wire on a reserved pin")
          .what("Raised for each wire that ends on a pin listed under a controller's `reserved:`.")
          .why(
              "The pin carries a meter, a bus or an internal supply; the control circuit's voltage"
                  + " on it can destroy the device, or the device can drive the circuit.")
          .remedy("Move the wire to a pin of the output or supply that it was meant for.")
          .blind(
              "Pins that the device keeps but the netlist does not list: only the device's own"
                  + " manual knows them.")
          .sources("common-practice");

  private final Basis basis;

  WiringReservedPin(Tables tables) {
    basis = Basis.of(FACTS, tables, Standing.COMMON_PRACTICE);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    List<Outcome> outcomes = new ArrayList<>();
    for (var part : study.circuit().netlist().parts().values()) {
      if (part instanceof Controller controller) {
        controller
            .reserved()
            .forEach((pin, use) -> outcomes.addAll(checkPin(study, controller, pin, use)));
      }
    }
    return outcomes;
  }

  private List<Outcome> checkPin(
      Study study, Controller controller, String pin, Written<String> use) {
    Terminal terminal = new Terminal(controller.name(), pin);
    List<Wire> wires = study.circuit().wiresAt(terminal);
    if (wires.isEmpty()) {
      return List.of(
          Subject.of(FACTS, use.mark(), terminal.toString())
              .satisfied("%s (%s) carries no wire.".formatted(terminal, use.value()), basis));
    }
    return wires.stream().<Outcome>map(wire -> occupied(controller, terminal, use, wire)).toList();
  }

  private Outcome occupied(
      Controller controller, Terminal terminal, Written<String> use, Wire wire) {
    Written<Terminal> here = wire.endAt(terminal);
    Written<Terminal> there = wire.farEnd(terminal);
    return Subject.of(FACTS, here.mark(), terminal.toString(), there.value().toString())
        .violated(
            "%s is not free".formatted(terminal),
            "%s keeps pin %s for: %s. A wire joins it to %s."
                .formatted(controller.name(), terminal.pin(), use.value(), there.value()),
            "lands on a reserved pin")
        .alsoAt(use.mark(), "kept for this")
        .todo("Take the wire off %s.%s".formatted(terminal, outputsOf(controller)), basis);
  }

  private static String outputsOf(Controller controller) {
    if (controller.outputs().isEmpty()) {
      return "";
    }
    return controller.outputs().entrySet().stream()
        .map(e -> "%s on %s and %s".formatted(e.getKey(), e.getValue().from(), e.getValue().to()))
        .collect(Collectors.joining("; ", " Its switching outputs are ", "."));
  }
}
