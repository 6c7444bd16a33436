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
            (load, all) -> {
              List<Breaks> wrong = new ArrayList<>();
              for (Breaks breaks : all) {
                if (!breaks.before().areMains()) {
                  continue;
                }
                if (breaks.takesLine() || !breaks.leavesLine()) {
                  outcomes.add(sound(load, breaks));
                } else {
                  wrong.add(breaks);
                }
              }
              if (!wrong.isEmpty()) {
                outcomes.add(wrong(study.circuit(), load, wrong));
              }
            });
    return outcomes;
  }

  private Outcome sound(Part load, Breaks breaks) {
    return Subject.of(FACTS, breaks.contacts().get(0).mark(), load.name(), breaks.part())
        .satisfied(
            "%s takes a line off %s, not the neutral alone."
                .formatted(breaks.actuator().name(), load.name()),
            basis);
  }

  /** One finding for a load, for it is one line that goes past all of them. */
  private Outcome wrong(Circuit circuit, Part load, List<Breaks> all) {
    Breaks breaks = all.get(0);
    List<String> at = new ArrayList<>(List.of(load.name()));
    all.forEach(b -> at.add(b.part()));
    String devices = all.stream().map(b -> b.actuator().name()).collect(Collectors.joining(", "));
    Feeding.Side side = breaks.after().all(Feeding.Kind.LINE).iterator().next();
    String line = side.toString();
    String pin = breaks.after().pinOn(Feeding.Kind.LINE).map(Node::name).orElse(load.name());
    Subject.Finding finding =
        new Subject(FACTS, breaks.contacts().get(0).mark(), at.stream().distinct().toList())
            .violated(
                "%s %s only the neutral of %s"
                    .formatted(devices, all.size() == 1 ? "opens" : "open", load.name()),
                "With %s%s open, %s stays on %s: the load is off and live. Its way: %s."
                    .formatted(
                        all.size() == 1 ? "" : "any of ",
                        devices,
                        line,
                        pin,
                        WayBack.kept(circuit, side, load.name(), breaks.contacts()::contains)),
                "opens the neutral")
            .alsoAt(Where.part(circuit, load.name()), "keeps %s".formatted(line));
    all.stream()
        .skip(1)
        .forEach(b -> finding.alsoAt(b.contacts().get(0).mark(), "opens the neutral as well"));
    return finding.todo(
        all.size() == 1
            ? "Put %s into the line to %s, or open line and neutral together."
                .formatted(contacts(breaks), pin)
            : "Lead the line to %s through %s as the neutral goes.".formatted(pin, devices),
        basis);
  }

  private static String contacts(Breaks breaks) {
    return breaks.contacts().stream().map(Contact::id).collect(Collectors.joining(", "));
  }
}
