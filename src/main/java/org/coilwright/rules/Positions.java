package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.circuit.Actuator;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Part.ContactForm;
import org.coilwright.solve.State;
import org.coilwright.solve.Study;

/** States in words, as a person at the panel names them: {@code U1.heat closed, B1 open}. */
final class Positions {
  private final Circuit circuit;

  Positions(Circuit circuit) {
    this.circuit = circuit;
  }

  static String of(Study study, State state) {
    return of(study, state.positions());
  }

  /** The positions of some independent contacts. */
  static String of(Study study, Map<String, Boolean> positions) {
    return new Positions(study.circuit()).words(positions);
  }

  /** A sentence on the opening switches and outputs of some names; empty if there is none. */
  static String ofOpening(Study study, Set<String> names) {
    Circuit circuit = study.circuit();
    List<String> opening =
        names.stream()
            .filter(
                n ->
                    circuit
                        .independentActuator(n)
                        .filter(
                            a ->
                                a.kind() == Actuator.Kind.OUTPUT
                                    || a.kind() == Actuator.Kind.SWITCH)
                        .filter(
                            a ->
                                circuit.contactsOf(a).stream()
                                    .allMatch(c -> c.form() == ContactForm.NC))
                        .isPresent())
            .toList();
    return opening.isEmpty()
        ? ""
        : " %s %s when operated (NC), and in an intent the name means operated: not %s is the position at rest, closed."
            .formatted(
                String.join(", ", opening), opening.size() == 1 ? "opens" : "open", opening.get(0));
  }

  private String words(Map<String, Boolean> positions) {
    List<String> words = new ArrayList<>();
    positions.forEach((name, operated) -> words.add(name + " " + word(name, operated)));
    return words.isEmpty() ? "as wired" : String.join(", ", words);
  }

  private String word(String name, boolean operated) {
    Optional<Actuator> moved =
        circuit
            .independentActuator(name)
            .filter(a -> a.kind() == Actuator.Kind.OUTPUT || a.kind() == Actuator.Kind.SWITCH);
    if (moved.isPresent()) {
      List<ContactForm> forms =
          circuit.contactsOf(moved.get()).stream().map(Contact::form).distinct().toList();
      if (forms.size() > 1) {
        return operated ? "operated" : "at rest";
      }
      if (forms.contains(ContactForm.NC)) {
        return operated ? "open" : "closed";
      }
    }
    // thermostats, cut-outs and protective devices: "operated" means that they still conduct
    return operated ? "closed" : "open";
  }
}
