package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A contact opens the neutral and leaves the line on the load. */
final class PolesNeutralOnly implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("poles.neutral-only", Weight.STOP, "neutral opened, line left on")
          .what(
              "Opens each device that alone turns a mains load off: relay, output, switch,"
                  + " thermostat, cut-out, fuse, breaker. Raised if it takes the neutral off the"
                  + " load and no line.")
          .why(
              "The load looks off and is live up to the open contact: whoever works on it touches"
                  + " the line, and an earth fault in it makes it heat with the contact open.")
          .remedy(
              "Move the contact into the line, or use one that opens line and neutral together.")
          .blind("Which of two wires in the wall is the line: only a measurement tells.")
          .sources("circuit-theory", "common-practice")
          .consequenceOf("poles.neutral-crossed");

  private final Basis basis;

  PolesNeutralOnly(Tables tables) {
    basis = Basis.of(FACTS, tables, Standing.COMMON_PRACTICE);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    List<Outcome> outcomes = new ArrayList<>();
    Breaks.ofLoads(study)
        .forEach(
            (load, all) ->
                all.stream()
                    .filter(breaks -> breaks.before().areMains())
                    .forEach(breaks -> outcomes.add(judge(study.circuit(), load, breaks))));
    return outcomes;
  }

  private Outcome judge(Circuit circuit, Part load, Breaks breaks) {
    String device = breaks.actuator().name();
    Subject subject =
        Subject.of(FACTS, breaks.contacts().get(0).mark(), load.name(), breaks.part());
    if (breaks.takesLine() || !breaks.leavesLine()) {
      return subject.satisfied(
          "%s takes a line off %s, not the neutral alone.".formatted(device, load.name()), basis);
    }
    Feeding.Side side = breaks.after().all(Feeding.Kind.LINE).iterator().next();
    String line = side.toString();
    String pin = breaks.after().pinOn(Feeding.Kind.LINE).map(Node::name).orElse(load.name());
    return subject
        .violated(
            "%s opens only the neutral of %s".formatted(device, load.name()),
            "With %s open, %s stays on %s: the load is off and live. Its way: %s."
                .formatted(
                    device,
                    line,
                    pin,
                    WayBack.kept(circuit, side, load.name(), breaks.contacts()::contains)),
            "opens the neutral")
        .alsoAt(Where.part(circuit, load.name()), "keeps %s".formatted(line))
        .todo(
            "Put %s into the line to %s, or open line and neutral together."
                .formatted(contacts(breaks), pin),
            basis);
  }

  private static String contacts(Breaks breaks) {
    return breaks.contacts().stream().map(Contact::id).collect(Collectors.joining(", "));
  }
}
