package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.coilwright.circuit.Circuit;
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

/** Nothing stops the heating at a temperature in ordinary use. */
final class LoadNoThermostat implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("load.no-thermostat", Weight.FIX, "heated vessel without a thermostat")
          .what(
              "Opens every thermostat, with all other contacts closed as far as their coils can be"
                  + " fed, and looks whether an element that heats a vessel is still heated.")
          .why(
              "The water runs up to the cut-out each day: it scalds, and the cut-out, made for a"
                  + " few operations, wears out.")
          .remedy(
              "Put a thermostat into the line of the element or into its contactor's coil circuit.")
          .blind(
              "Whether the thermostat feels the water of this vessel; a controller that measures"
                  + " it.")
          .sources("hot-water-storage", "common-practice")
          .consequenceOf("load.limit-wrong-form");

  private final Basis basis;

  LoadNoThermostat(Tables tables) {
    basis = Basis.of(FACTS, tables, Standing.COMMON_PRACTICE);
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
    for (Part load : Loads.of(circuit)) {
      if (load instanceof Part.Heater heater && whole.at(load.name()).areComplete()) {
        outcomes.add(judge(Overheating.of(study, heater), heater));
      }
    }
    return outcomes;
  }

  private Outcome judge(Overheating heating, Part.Heater heater) {
    List<Part.Thermal> thermostats = heating.guards(false);
    Subject subject = Overheating.subject(FACTS, heater, thermostats);
    if (heater.vessel().isEmpty()) {
      return subject.undecided(
          "vessel of " + heater.name(),
          "Whether %s heats a vessel, and so needs a thermostat, is not written."
              .formatted(heater.name()));
    }
    Set<String> open = Overheating.names(thermostats);
    if (!thermostats.isEmpty() && !heating.with(open, Set.of()).areComplete()) {
      return subject.satisfied(
          "%s stops heating when %s open%s."
              .formatted(heater.name(), String.join(", ", open), open.size() == 1 ? "s" : ""),
          basis);
    }
    Subject.Finding finding =
        subject.violated(
            "no thermostat stops %s".formatted(heater.name()),
            thermostats.isEmpty()
                ? "It heats a vessel, and there is no thermostat."
                : "It heats a vessel, and stays on with %s open."
                    .formatted(String.join(", ", open)),
            "a heated vessel");
    finding.alsoAt(heater.head().mark(), "heats without end");
    thermostats.forEach(t -> finding.alsoAt(t.head().mark(), "does not stop it"));
    return finding.todo(
        "Put a thermostat into the line of %s or into its contactor's coil circuit."
            .formatted(heater.name()),
        basis);
  }
}
