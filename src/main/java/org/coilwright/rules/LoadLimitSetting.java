package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Quantity;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Outcome.Undecided;
import org.coilwright.rule.Outcome.Violated;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.solve.SwitchedLoads;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** Thermostat, cut-out and relief valve do not open one after the other. */
final class LoadLimitSetting implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("load.limit-setting", Weight.FIX, "settings of thermostat, cut-out and relief")
          .what(
              "For each heater of a vessel: the water that is wanted (`switching.water.to`) must"
                  + " not be hotter than the thermostat surely lets it become, the thermostat must"
                  + " have opened before the cut-out may, and in a closed vessel the cut-out before"
                  + " the relief valve may. Each with its tolerance, ± 5 K where none is written. A"
                  + " closed vessel above 15 l has a temperature relief valve (`relief`); where"
                  + " none is written a cut-out above 90 °C is too late for any. A valve that may"
                  + " wait until the water has more than 100 °C is no relief.")
          .why(
              "A cut-out that the thermostat's water trips leaves the house cold until somebody"
                  + " resets it, and one that opens after the relief valve leaves the valve to do"
                  + " its work, again and again, with boiling hot water.")
          .remedy("Set them so that each has opened before the next may.")
          .blind(
              "How far a setting dial has been turned on site; where the sensors sit; how much"
                  + " hotter the top of the vessel is.")
          .sources("hot-water-storage", "en-1490", "common-practice")
          .consequenceOf("load.limit-wrong-form", "load.no-cut-out");

  private final OpeningOrder turns;
  private final Cited<Double> tolerance;
  private final Cited<Double> classA;

  LoadLimitSetting(Tables tables) {
    Basis order = new Basis(List.of(tables.source("hot-water-storage").cite()), Standing.PUBLISHED);
    tolerance = tables.figure("sizing.thermal-tolerance");
    classA = tables.figure("sizing.relief-class-a");
    turns =
        new OpeningOrder(
            FACTS,
            order,
            classA,
            tables.figure("sizing.relief-class-a-opened"),
            tables.figure("sizing.vessel-without-relief"),
            tables.figure("sizing.cut-out-highest"));
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
      if (load instanceof Part.Heater heater
          && heater.vessel().isPresent()
          && whole.at(load.name()).areComplete()) {
        outcomes.addAll(judge(study, heater, heater.vessel().get()));
      }
    }
    return outcomes;
  }

  private List<Outcome> judge(Study study, Part.Heater heater, Part.Vessel vessel) {
    List<Part.Thermal> thermostats = Overheating.of(study, heater).stopping(false);
    List<Part.Thermal> cutOuts = Overheating.of(study, heater).stopping(true);
    List<Part.Thermal> guards = new ArrayList<>(thermostats);
    guards.addAll(cutOuts);
    if (guards.isEmpty()) {
      return List.of();
    }
    Subject subject = Overheating.subject(FACTS, heater, guards);
    Optional<Part.Thermal> unset = guards.stream().filter(g -> g.opensAt().isEmpty()).findFirst();
    if (unset.isPresent()) {
      return List.of(
          subject.undecided(
              "opens-at of " + unset.get().name(),
              "Whether %s opens in its turn is open.".formatted(unset.get().name())));
    }
    List<Outcome> found = new ArrayList<>();
    // of several the first to open counts
    Optional<OpeningOrder.Step> thermostat =
        thermostats.stream().map(this::step).min(OpeningOrder.Step.BY_HIGHEST);
    Optional<OpeningOrder.Step> trips =
        cutOuts.stream().map(this::step).min(OpeningOrder.Step.BY_LOWEST);
    Optional<OpeningOrder.Step> opens =
        cutOuts.stream().map(this::step).min(OpeningOrder.Step.BY_HIGHEST);
    thermostat
        .flatMap(t -> wanted(study, heater).flatMap(w -> turns.enough(heater, w, t)))
        .ifPresent(found::add);
    thermostat.flatMap(t -> trips.flatMap(c -> turns.apart(heater, t, c))).ifPresent(found::add);
    if (vessel.closed().filter(Written::value).isPresent()) {
      turns.reliefInTime(heater, vessel).ifPresent(found::add);
      opens
          .flatMap(c -> turns.relief(subject, heater, vessel, c, thermostat))
          .ifPresent(found::add);
    } else if (vessel.closed().isEmpty()) {
      found.add(
          subject.undecided(
              "vessel.closed of " + heater.name(),
              "Whether the vessel of %s has a relief valve that must not open first is open."
                  .formatted(heater.name())));
    }
    List<Outcome> faults = found.stream().filter(Violated.class::isInstance).toList();
    if (!faults.isEmpty()) {
      return faults;
    }
    return found.stream()
        .filter(Undecided.class::isInstance)
        .findFirst()
        .map(List::of)
        .orElseGet(() -> List.of(inTurn(subject, heater, vessel, guards)));
  }

  private OpeningOrder.Step step(Part.Thermal device) {
    return new OpeningOrder.Step(device, OpeningBand.of(device, tolerance).orElseThrow());
  }

  private Outcome inTurn(
      Subject subject, Part.Heater heater, Part.Vessel vessel, List<Part.Thermal> guards) {
    String all =
        String.join(
            ", ", guards.stream().map(g -> g.name() + " at " + step(g).band().by()).toList());
    boolean taken = guards.stream().anyMatch(g -> step(g).band().isTaken());
    Basis rests = taken ? Basis.of(classA, tolerance) : Basis.of(classA);
    return subject.satisfied(
        "%s open%s in turn for %s%s."
            .formatted(
                all,
                guards.size() == 1 ? "s" : "",
                heater.name(),
                vessel.relief().map(r -> ", the relief valve at " + r.text()).orElse("")),
        rests);
  }

  /** The water that the settings want, if this heater makes it. */
  private static Optional<Written<Quantity>> wanted(Study study, Part heater) {
    return study
        .circuit()
        .netlist()
        .switching()
        .filter(
            s ->
                s.output()
                    .filter(o -> SwitchedLoads.of(study, o.value()).loads().contains(heater))
                    .isPresent())
        .flatMap(s -> s.water())
        .flatMap(w -> w.to());
  }
}
