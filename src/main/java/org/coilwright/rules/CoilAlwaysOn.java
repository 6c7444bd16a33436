package org.coilwright.rules;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.State;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** Every position of the contacts energises the coil. */
final class CoilAlwaysOn implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("coil.always-on", Weight.STOP, "coil that nothing switches off")
          .what("Raised for each coil that is energised in every position of the contacts.")
          .why(
              "Nothing can switch off what hangs on the relay's contacts: a heater behind it heats"
                  + " for as long as there is voltage.")
          .remedy("Lead one side of the coil through the contact that shall switch it.")
          .blind(
              "A relay that is meant to watch for the supply and to drop with it: it looks the same"
                  + " as one that was wired past its contact.")
          .sources("circuit-theory")
          .consequenceOf("wiring.short-circuit", "wiring.no-steady-state")
          .meansWiredOtherwise();

  private final Basis basis;

  CoilAlwaysOn(Tables tables) {
    basis = Basis.of(FACTS, tables, Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    return PerCoil.askOfEveryPosition(study, FACTS, feed -> Optional.of(judge(feed)));
  }

  private Outcome judge(CoilFeed feed) {
    List<State> states = feed.states();
    long off = states.stream().filter(s -> !feed.isEnergised(s)).count();
    Subject subject = PerCoil.subject(FACTS, feed);
    if (off > 0) {
      return subject.satisfied(
          "%s is off in %s of %s positions.".formatted(feed.relay(), off, states.size()), basis);
    }
    State first = states.get(0);
    String volts = Printed.volts(Math.abs(feed.study().coil(feed.relay(), first).volts()));
    String way = feed.wayIn(first).map(Path::inWords).map(w -> " Its way: " + w + ".").orElse("");
    Subject.Finding finding =
        subject.violated(
            "%s is always energised".formatted(feed.relay()),
            states.size() == 1
                ? "It gets %s and nothing in the circuit can take it away.%s".formatted(volts, way)
                : "It gets %s with every contact at rest, and it stays on in each of the %s positions.%s"
                    .formatted(volts, states.size(), way),
            "always gets current");
    for (Source source : feed.sources()) {
      finding.alsoAt(source.mark(), "from here, whatever the contacts do");
    }
    return finding.todo(whatToDo(feed, first), basis);
  }

  private static String whatToDo(CoilFeed feed, State atRest) {
    String switches =
        feed.switches().stream()
            .filter(contact -> !feed.study().contact(contact, atRest).closed())
            .map(Branch::id)
            .distinct()
            .collect(Collectors.joining(", "));
    return switches.isEmpty()
        ? "Lead %s or %s through the contact that shall switch %s."
            .formatted(feed.coil().from(), feed.coil().to(), feed.relay())
        : "Part this way: it leads past %s.".formatted(switches);
  }
}
