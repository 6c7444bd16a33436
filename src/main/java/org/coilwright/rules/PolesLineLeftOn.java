package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site.Practice;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** Off leaves at least one line on a load that hangs on several. */
final class PolesLineLeftOn implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("poles.line-left-on", Weight.FIX, "line left on a load that is off")
          .what(
              "Opens each relay, output or switch that alone turns a mains load off, and counts the"
                  + " lines that stay on the load while it takes others off.")
          .why(
              "The load is off and live; an earth fault in a heating element lets the line that is"
                  + " left heat it, and no thermostat in the other line stops that.")
          .remedy("Switch every line: one pole for each line of the load.")
          .blind(
              "Thermostats and the cut-outs of an open vessel; those of a closed one have"
                  + " load.no-cut-out, breakers and fuses poles.devices-apart. How the circuit is"
                  + " isolated for work.")
          .sources("common-practice", "nec")
          .consequenceOf("poles.load-not-switched", "poles.neutral-borrowed");

  private final Basis practice;
  private final Basis code;

  PolesLineLeftOn(Tables tables) {
    practice =
        new Basis(List.of(tables.source("common-practice").cite()), Standing.COMMON_PRACTICE);
    code = new Basis(List.of(tables.source("nec").cite()), Standing.FROM_MEMORY);
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
                    // what opens the neutral alone is a heavier matter, and another rule's
                    .filter(breaks -> breaks.isControl() && breaks.takesLine())
                    .forEach(breaks -> outcomes.add(judge(study.circuit(), load, breaks))));
    return outcomes;
  }

  private Outcome judge(Circuit circuit, Part load, Breaks breaks) {
    String device = breaks.actuator().name();
    Set<Feeding.Side> left = breaks.after().all(Feeding.Kind.LINE);
    int of = breaks.before().all(Feeding.Kind.LINE).size();
    Subject subject =
        Subject.of(FACTS, breaks.contacts().get(0).mark(), load.name(), breaks.part());
    Measure found = new Measure(left.size(), "lines");
    Measure held = new Measure(0, "lines");
    if (left.isEmpty()) {
      return subject.satisfied(
          of == 1
              ? "%s takes the line off %s.".formatted(device, load.name())
              : "%s takes all %s lines off %s.".formatted(device, of, load.name()),
          found,
          held,
          practice);
    }
    boolean nec = circuit.netlist().site().practice().value() == Practice.NEC;
    String lines = left.stream().map(Feeding.Side::toString).collect(Collectors.joining(", "));
    String pin = breaks.after().pinOn(Feeding.Kind.LINE).map(Node::name).orElse(load.name());
    return subject
        .violated(
            "%s leaves a line on %s".formatted(device, load.name()),
            "%s hangs on %s lines. With %s open, %s stay%s on it, at %s; none should."
                .formatted(load.name(), of, device, lines, left.size() == 1 ? "s" : "", pin),
            "opens %s of %s lines".formatted(of - left.size(), of))
        .alsoAt(load.head().mark(), "keeps %s".formatted(lines))
        .measured(found, held)
        .todo(
            (nec
                    ? "Switch both lines of this load, as the code asks where one device turns it"
                        + " off:"
                    : "Switch every line of this load:")
                + " add a pole to %s for %s.".formatted(device, lines),
            nec ? code : practice);
  }
}
