package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.circuit.Actuator;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Part.ContactForm;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.solve.Trouble.NoSteadyState;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A relay's own contact lets it drop: the circuit buzzes. */
final class WiringNoSteadyState implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("wiring.no-steady-state", Weight.STOP, "relay that never comes to rest")
          .what(
              "Carries every position of the contacts on until no relay moves any more; raised"
                  + " where that never happens.")
          .why(
              "The relay pulls in and drops many times a second: its contacts burn off or weld, and"
                  + " the load behind them is switched along with it.")
          .remedy("Keep a relay's opening contact out of the way that feeds its own coil.")
          .blind("Relays that chatter because of a falling voltage, which the coil rules look at.")
          .sources("circuit-theory");

  private final Basis basis;

  WiringNoSteadyState(Tables tables) {
    basis = Basis.of(FACTS, tables, Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    List<Outcome> outcomes = new ArrayList<>();
    Troubles.alike(study, NoSteadyState.class, NoSteadyState::relays)
        .forEach(alike -> outcomes.add(buzzing(study, alike)));
    outcomes.addAll(Troubles.unexplored(FACTS, study));
    if (outcomes.isEmpty()) {
      outcomes.add(
          Subject.ofCircuit(FACTS, study.circuit().netlist())
              .satisfied("Every relay comes to rest in every position of the contacts.", basis));
    }
    return outcomes;
  }

  private Outcome buzzing(Study study, List<NoSteadyState> alike) {
    Circuit circuit = study.circuit();
    List<String> relays = alike.get(0).relays();
    String names = String.join(", ", relays);
    var finding =
        new Subject(FACTS, Where.coil(circuit, relays.get(0)), relays)
            .violated(
                "%s never come%s to rest".formatted(names, relays.size() == 1 ? "s" : ""),
                relays.size() == 1
                    ? "%s, %s opens its own coil circuit when it pulls in and closes it when it drops."
                        .formatted(Troubles.with(study, alike), names)
                    : "%s, %s go on switching one another and never stop."
                        .formatted(Troubles.with(study, alike), names),
                "pulls in, drops, pulls in again");
    List<String> opening = new ArrayList<>();
    for (String relay : relays) {
      finding.alsoAt(Where.coil(circuit, relay), "this coil as well");
      for (Contact contact : circuit.contactsOf(new Actuator(Actuator.Kind.COIL, relay))) {
        if (contact.form() == ContactForm.NC
            && !circuit.wiresAt(contact.to().terminals().get(0)).isEmpty()) {
          finding.alsoAt(contact.mark(), "opens when %s pulls in".formatted(relay));
          opening.add(contact.id());
        }
      }
    }
    return finding.todo(
        opening.isEmpty()
            ? "Take the contact that opens out of the way that feeds the coil."
            : "Take %s out of the way that feeds the coil, or use the opposite contact there."
                .formatted(String.join(" or ", opening)),
        basis);
  }
}
