package org.coilwright.rules;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Wire;
import org.coilwright.netlist.Written;
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

/** A load, controller or supply needs a protective conductor and has none. */
final class PolesEarthMissing implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("poles.earth-missing", Weight.STOP, "load without protective conductor")
          .what(
              "Follows the PE pin of each mains load back to the PE of the mains, never by way of"
                  + " the neutral. Loads of class I need one, and where no class is"
                  + " written heaters and motors; so does any load whose PE pin has a"
                  + " wire, and a controller or supply with a PE among the pins of its mains"
                  + " input. A load of class III must not hang on the mains.")
          .why(
              "One fault inside it puts its metal parts, and the water in a heater, on the line,"
                  + " and no device trips until a person closes the circuit.")
          .remedy("Run a protective conductor from the mains to it, of the size of its lines.")
          .blind("Whether the conductor in the wall is whole: the continuity test shows that.")
          .sources("iec-60364-4-41", "part-data");

  private static final String CLASS_THREE = "III";

  private final Basis basis;
  private final Basis sheet;

  PolesEarthMissing(Tables tables) {
    basis = Basis.of(FACTS, tables, Standing.PUBLISHED);
    sheet = new Basis(List.of(tables.source("part-data").cite()), Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    Set<Node> neutral = study.circuit().reach(NeutralEarth.of(study).neutral(), Circuit::isWay);
    return Earthing.ofLoadsAndInputs(study).stream()
        .map(earthing -> judge(study.circuit(), earthing, neutral))
        .toList();
  }

  private Outcome judge(Circuit circuit, Earthing earthing, Set<Node> neutral) {
    Part load = earthing.load();
    String pin = earthing.pin().name();
    Subject subject = Subject.of(FACTS, load.head().mark(), pin);
    Optional<Written<String>> built = load.head().protectionClass();
    if (built.filter(c -> c.value().equals(CLASS_THREE)).isPresent()) {
      return subject
          .violated(
              "%s is of class III and hangs on the mains".formatted(load.name()),
              "It is made for extra-low voltage alone: nothing in it protects from more.",
              "hangs on the mains")
          .alsoAt(built.get().mark(), "class III")
          .todo(
              "Feed %s from a SELV supply, or write the class on its plate.".formatted(load.name()),
              basis);
    }
    if (earthing.way().isPresent()) {
      return subject.satisfied("%s reaches %s.".formatted(pin, earthing.mains()), basis);
    }
    Terminal terminal = new Terminal(load.name(), "PE");
    List<Wire> wires = circuit.wiresAt(terminal);
    if (wires.isEmpty() && !Earthing.isNeeded(load)) {
      if (built.isPresent()) {
        return subject.satisfied(
            "%s is of class %s and needs none.".formatted(load.name(), built.get().value()), sheet);
      }
      return subject.undecided(
          "class of " + load.name(),
          "No wire ends on %s; only a double insulated load needs none.".formatted(pin));
    }
    var finding =
        subject.violated(
            "%s has no protective conductor".formatted(load.name()),
            wires.isEmpty()
                ? "No wire ends on %s, and %s hangs on the mains.".formatted(pin, load.name())
                : neutral.contains(earthing.pin())
                    ? "%s reaches the neutral and not %s: a break in the neutral puts the case of %s on the line."
                        .formatted(pin, earthing.mains(), load.name())
                    : "The wire on %s does not lead to %s.".formatted(pin, earthing.mains()),
            "%s reaches no earth".formatted(pin));
    wires.forEach(wire -> finding.alsoAt(wire.mark(), "leads elsewhere"));
    if (wires.isEmpty()) {
      finding.change(
          Rewiring.wire(
              circuit.netlist(),
              earthing.mains().name(),
              pin,
              Rewiring.runOf(circuit.netlist(), load.name())));
    }
    return finding
        .alsoAt(Where.part(circuit, earthing.mains().terminals().get(0).part()), "earth is here")
        .todo("Run a protective conductor from %s to %s.".formatted(earthing.mains(), pin), basis);
  }
}
