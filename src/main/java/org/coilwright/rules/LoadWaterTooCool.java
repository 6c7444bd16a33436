package org.coilwright.rules;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** Stored water is kept at a temperature at which germs grow. */
final class LoadWaterTooCool implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("load.water-too-cool", Weight.NOTE, "stored water kept below 60 °C")
          .what(
              "Looks at what each thermostat that stops the heater of a vessel is set to, tolerance"
                  + " left out: below 60 °C it is noted, unless another heater of a vessel with as"
                  + " many `litres` has a thermostat that opens at 60 °C or above.")
          .why(
              "Legionella grow in water of 20 to 45 °C and live on at 50 °C; a shower carries them"
                  + " into the lungs.")
          .remedy(
              "Set the thermostat to 60 °C or more with a mixing valve before the taps (60 °C"
                  + " scalds within seconds), or draw the heater that raises the whole vessel once"
                  + " a day.")
          .blind(
              "How often the vessel really gets that warm, and whether all of it does; water that"
                  + " is only bathed in or only heats a house; a boiler that is not drawn.")
          .sources("legionella-guidance");

  private final Cited<Double> stored;

  LoadWaterTooCool(Tables tables) {
    stored = tables.figure("sizing.stored-water");
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
    for (Part.Heater heater : vessels(circuit)) {
      if (whole.at(heater.name()).areComplete()) {
        judge(study, heater).ifPresent(outcomes::add);
      }
    }
    return outcomes;
  }

  private static List<Part.Heater> vessels(Circuit circuit) {
    return Loads.of(circuit).stream()
        .filter(p -> p instanceof Part.Heater heater && heater.vessel().isPresent())
        .map(Part.Heater.class::cast)
        .toList();
  }

  private Optional<Outcome> judge(Study study, Part.Heater heater) {
    List<Part.Thermal> thermostats = Overheating.of(study, heater).stopping(false);
    if (thermostats.isEmpty()) {
      return Optional.empty();
    }
    Subject subject = Overheating.subject(FACTS, heater, thermostats);
    Optional<Part.Thermal> unset =
        thermostats.stream().filter(t -> t.opensAt().isEmpty()).findFirst();
    if (unset.isPresent()) {
      return Optional.of(
          subject.undecided(
              "opens-at of " + unset.get().name(),
              "Whether the water of %s is stored hot enough is open.".formatted(heater.name())));
    }
    Part.Thermal first =
        thermostats.stream().min(Comparator.comparingDouble(LoadWaterTooCool::opens)).orElseThrow();
    Written<Quantity> set = first.opensAt().orElseThrow();
    Measure value = new Measure(opens(first), "°C");
    Measure limit = new Measure(stored.value(), "°C");
    String limitText = Printed.of(stored.value(), Dimension.TEMPERATURE);
    if (!isCool(first)) {
      return Optional.of(
          subject.satisfied(
              "%s keeps the water of %s at %s (at least %s)."
                  .formatted(first.name(), heater.name(), set.text(), limitText),
              value,
              limit,
              Basis.of(stored)));
    }
    Optional<Part.Heater> other = raises(study, heater);
    if (other.isPresent()) {
      return Optional.of(
          subject.satisfied(
              "%s keeps the water of %s at %s, and %s, taken to heat the same vessel, can raise it to %s."
                  .formatted(
                      first.name(), heater.name(), set.text(), other.get().name(), limitText),
              Basis.of(stored)));
    }
    return Optional.of(
        new Subject(FACTS, set.mark(), subject.at())
            .violated(
                "the water of %s is stored at %s".formatted(heater.name(), set.text()),
                "%s stops the heating at %s; hot water is stored at %s or more, and no other heater of this vessel raises it."
                    .formatted(first.name(), set.text(), limitText),
                "below " + limitText)
            .alsoAt(heater.vessel().map(Part.Vessel::mark).orElseThrow(), "stored here")
            .measured(value, limit)
            .change(set.mark(), OpeningBand.of(first, stored).orElseThrow().at(stored.value()))
            .todo(
                "Set %s to %s or more and mix before the taps, or draw the heater that raises the vessel once a day."
                    .formatted(first.name(), limitText),
                Basis.of(stored)));
  }

  private static double opens(Part.Thermal thermostat) {
    return thermostat.opensAt().orElseThrow().value().nominal();
  }

  private boolean isCool(Part.Thermal thermostat) {
    return Comparison.fallsShort(opens(thermostat), stored.value());
  }

  /** Another heater of as many litres, none of whose thermostats stops it below the limit. */
  private Optional<Part.Heater> raises(Study study, Part.Heater cool) {
    return vessels(study.circuit()).stream()
        .filter(h -> !h.name().equals(cool.name()))
        .filter(h -> litres(h).isPresent() && litres(h).equals(litres(cool)))
        .filter(
            h -> {
              List<Part.Thermal> its = Overheating.of(study, h).stopping(false);
              return !its.isEmpty()
                  && its.stream().allMatch(t -> t.opensAt().isPresent() && !isCool(t));
            })
        .findFirst();
  }

  private static Optional<Double> litres(Part.Heater heater) {
    return heater.vessel().flatMap(Part.Vessel::litres).map(l -> l.value().nominal());
  }
}
