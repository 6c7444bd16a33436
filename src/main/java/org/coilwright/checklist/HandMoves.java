package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.coilwright.circuit.Actuator;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.solve.Probing;

/** What a hand can do to a circuit that is switched off, so that a reading tells more. */
final class HandMoves {
  private final Circuit circuit;
  private final Texts texts;

  HandMoves(Circuit circuit, Texts texts) {
    this.circuit = circuit;
    this.texts = texts;
  }

  /**
   * Something done by hand before the leads are put on.
   *
   * @param name as part of a row's name; empty if nothing is done
   * @param inWords a sentence; empty if nothing is done
   */
  record Move(String name, String inWords, UnaryOperator<Probing> how) {}

  /** Nothing moved; then each thing that a hand can move and that has a contact there. */
  List<Move> of(List<Terminal> pins) {
    Set<Node> nodes = new HashSet<>();
    pins.forEach(pin -> circuit.find(pin).ifPresent(nodes::add));
    Set<Actuator> near = new LinkedHashSet<>();
    nodes.stream()
        .flatMap(node -> circuit.branchesAt(node).stream())
        .filter(Contact.class::isInstance)
        .map(Contact.class::cast)
        .filter(contact -> contact.actuator().kind() != Actuator.Kind.OUTPUT)
        .sorted(Comparator.comparingInt(circuit::place))
        .forEach(contact -> near.add(contact.actuator()));
    List<Move> moves = new ArrayList<>();
    moves.add(new Move("", "", UnaryOperator.identity()));
    near.forEach(
        actuator ->
            moves.add(
                new Move(
                    actuator.name(),
                    inWords(actuator),
                    probing -> probing.operating(Map.of(actuator.name(), position(actuator))))));
    return moves;
  }

  /** The position that is not the one of a dead circuit. */
  private boolean position(Actuator actuator) {
    return switch (actuator.kind()) {
      case PROTECTIVE, COIL, SWITCH, OUTPUT -> true;
      case THERMOSTAT, CUT_OUT ->
          circuit.contactsOf(actuator).stream().anyMatch(c -> c.form() == Part.ContactForm.NO);
    };
  }

  private String inWords(Actuator actuator) {
    Optional<Part> part =
        circuit.contactsOf(actuator).stream()
            .map(Branch::part)
            .findFirst()
            .flatMap(p -> Optional.ofNullable(circuit.netlist().parts().get(p)));
    String key =
        switch (actuator.kind()) {
          case THERMOSTAT -> position(actuator) ? "when.thermostat-closed" : "when.thermostat-open";
          case CUT_OUT -> "when.cut-out-open";
          case SWITCH, OUTPUT -> "when.operated";
          case COIL ->
              part.filter(p -> p instanceof Part.Relay r && r.isContactor()).isPresent()
                  ? "when.contactor-in"
                  : "when.relay-in";
          case PROTECTIVE ->
              part.filter(p -> p instanceof Part.Fuse).isPresent()
                  ? "when.fuse-in"
                  : "when.breaker-on";
        };
    return texts.of(key, actuator.name());
  }
}
