// Over 250 lines: one question of the order after the other, each with its way out.
package org.coilwright.rules;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.CurrentKind;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.table.Cited;

/**
 * Whether what guards a vessel opens one after the other. Each question is answered by nothing
 * where the order surely holds, by a finding where it does not by what is written, and is undecided
 * where a tolerance that is not written would tell.
 *
 * @param order what the order itself rests on
 * @param classA °C from which the relief valve that opens last begins to open
 * @param opened °C at which that valve has opened
 * @param small litres up to which a closed vessel may do without one
 * @param hottest °C that stored water never exceeds
 */
record OpeningOrder(
    RuleFacts facts,
    Basis order,
    Cited<Double> classA,
    Cited<Double> opened,
    Cited<Double> small,
    Cited<Double> hottest) {

  /** A device and the band in which it opens. */
  record Step(Part.Thermal device, OpeningBand band) {
    static final Comparator<Step> BY_HIGHEST = Comparator.comparingDouble(s -> s.band().highest());
    static final Comparator<Step> BY_LOWEST = Comparator.comparingDouble(s -> s.band().lowest());

    String name() {
      return device.name();
    }
  }

  /** Whether the thermostat lets the water become as hot as is wanted. */
  Optional<Outcome> enough(Part.Heater heater, Written<Quantity> wanted, Step thermostat) {
    double most = wanted.value().nominal();
    double least = thermostat.band().written().low();
    Subject subject = subject(heater, thermostat.device());
    if (Comparison.exceeds(most, least)) {
      return Optional.of(
          subject
              .violated(
                  "%s opens before the water is hot".formatted(thermostat.name()),
                  "The water shall have %s; %s may open at %s."
                      .formatted(
                          wanted.text(),
                          thermostat.name(),
                          Printed.of(least, Dimension.TEMPERATURE)),
                  "opens first")
              .alsoAt(wanted.mark(), "wanted")
              .change(
                  thermostat.device().opensAt().orElseThrow().mark(),
                  thermostat.band().at(most + thermostat.band().written().nominal() - least))
              .todo(
                  "Set %s to %s or higher, or want %s at most (`switching.water.to`)."
                      .formatted(
                          thermostat.name(),
                          Printed.of(
                              most + thermostat.band().written().nominal() - least,
                              Dimension.TEMPERATURE),
                          Printed.of(least, Dimension.TEMPERATURE)),
                  order));
    }
    return Comparison.exceeds(most, thermostat.band().lowest())
        ? Optional.of(depends(subject, thermostat, "lets the water become " + wanted.text()))
        : Optional.empty();
  }

  /** Whether the thermostat has opened before the cut-out may. */
  Optional<Outcome> apart(Part.Heater heater, Step thermostat, Step cutOut) {
    Subject subject = subject(heater, cutOut.device(), thermostat.device());
    double high = thermostat.band().written().high();
    double low = cutOut.band().written().low();
    if (!Comparison.fallsShort(high, low)) {
      return Optional.of(
          subject
              .violated(
                  "%s may trip before %s opens".formatted(cutOut.name(), thermostat.name()),
                  "%s opens at %s, %s may open at %s already."
                      .formatted(
                          thermostat.name(),
                          thermostat.band().by(),
                          cutOut.name(),
                          Printed.of(low, Dimension.TEMPERATURE)),
                  "may open at " + Printed.of(low, Dimension.TEMPERATURE))
              .alsoAt(
                  thermostat.device().opensAt().orElseThrow().mark(),
                  "may let it reach " + Printed.of(high, Dimension.TEMPERATURE))
              .change(
                  thermostat.device().opensAt().orElseThrow().mark(),
                  thermostat.band().at(low - (high - thermostat.band().written().nominal()) - 1))
              .todo(
                  "Set %s to %s or lower."
                      .formatted(
                          thermostat.name(),
                          Printed.of(
                              low - (high - thermostat.band().written().nominal()) - 1,
                              Dimension.TEMPERATURE)),
                  order));
    }
    if (Comparison.fallsShort(thermostat.band().highest(), cutOut.band().lowest())) {
      return Optional.empty();
    }
    boolean ofThermostat = thermostat.band().isTaken();
    Step loose = ofThermostat ? thermostat : cutOut;
    return Optional.of(
        depends(
            subject(heater, loose.device()),
            loose,
            ofThermostat
                ? "has opened before %s trips".formatted(cutOut.name())
                : "waits until %s has opened".formatted(thermostat.name())));
  }

  /** Whether the relief valve has opened before the water is hotter than it may become. */
  Optional<Outcome> reliefInTime(Part.Heater heater, Part.Vessel vessel) {
    return vessel
        .relief()
        .filter(r -> Comparison.exceeds(r.value().high(), hottest.value()))
        .map(
            r ->
                new Subject(facts, r.mark(), List.of(heater.name()))
                    .violated(
                        "the relief valve of %s opens too late".formatted(heater.name()),
                        "It opens at %s; the water in a closed vessel must never have more than %s."
                            .formatted(
                                r.text(), Printed.given(hottest.value(), Dimension.TEMPERATURE)),
                        "may open at "
                            + Printed.of(r.value().high(), Dimension.TEMPERATURE)
                            + " only")
                    .alsoAt(vessel.mark(), "is closed")
                    .change(r.mark(), valve())
                    .todo(
                        "Fit a temperature relief valve of class A, which opens at %s, and a cut-out that has opened before."
                            .formatted(valve()),
                        Basis.of(hottest, classA, opened)));
  }

  /** Whether the cut-out has opened before the relief valve may. */
  Optional<Outcome> relief(
      Subject whole,
      Part.Heater heater,
      Part.Vessel vessel,
      Step cutOut,
      Optional<Step> thermostat) {
    Subject subject = subject(heater, cutOut.device());
    double limit = vessel.relief().map(r -> r.value().low()).orElse(classA.value());
    String valve =
        vessel
            .relief()
            .map(r -> "the relief valve opens at " + r.text())
            .orElse(
                "no relief valve is written, and none opens later than from %s on"
                    .formatted(Printed.of(limit, Dimension.TEMPERATURE)));
    double high = cutOut.band().written().high();
    boolean late =
        vessel.relief().isPresent()
            ? !Comparison.fallsShort(high, limit)
            : Comparison.exceeds(high, limit);
    if (late) {
      Subject.Finding finding =
          subject.violated(
              "%s may open after the relief valve".formatted(cutOut.name()),
              "It opens at %s; %s.".formatted(cutOut.band().by(), valve),
              "not surely below " + Printed.of(limit, Dimension.TEMPERATURE));
      finding.alsoAt(
          vessel.relief().map(Written::mark).orElse(vessel.mark()),
          vessel.relief().isPresent() ? "opens first" : "no relief valve written");
      double set = limit - (high - cutOut.band().written().nominal()) - 1;
      finding.change(cutOut.device().opensAt().orElseThrow().mark(), cutOut.band().at(set));
      String lower =
          thermostat
              .flatMap(t -> below(t, set - cutOut.band().written().nominal(), cutOut))
              .map(
                  t -> {
                    finding.change(t.device().opensAt().orElseThrow().mark(), t.band().text());
                    return " Set %s to %s then.".formatted(t.name(), t.band().text());
                  })
              .orElse("");
      return Optional.of(
          finding.todo(
              "Fit a cut-out that has opened below %s, its tolerance counted.%s"
                  .formatted(Printed.of(limit, Dimension.TEMPERATURE), lower),
              vessel.relief().isPresent() ? order : Basis.of(classA)));
    }
    if (vessel.relief().isEmpty() && !isSmall(vessel)) {
      return Optional.of(
          whole.undecided(
              "vessel.relief of " + heater.name(),
              "Whether %s opens before the relief valve of the vessel of %s is open: a closed vessel above %s has one."
                  .formatted(
                      cutOut.name(),
                      heater.name(),
                      Printed.given(small.value(), Dimension.VOLUME))));
    }
    return Comparison.fallsShort(cutOut.band().highest(), limit)
            || (vessel.relief().isEmpty() && cutOut.band().highest() == limit)
        ? Optional.empty()
        : Optional.of(depends(subject, cutOut, "opens before the relief valve"));
  }

  /** The thermostat as it must be set to open before a cut-out that is set by so much higher. */
  private static Optional<Step> below(Step thermostat, double higher, Step cutOut) {
    OpeningBand band = thermostat.band();
    double low = cutOut.band().written().low() + higher;
    return Comparison.fallsShort(band.written().high(), low)
        ? Optional.empty()
        : Optional.of(
            new Step(
                thermostat.device(),
                new OpeningBand(
                    band.written(),
                    band.at(low - (band.written().high() - band.written().nominal()) - 1),
                    band.taken())));
  }

  /** How a valve of class A opens, as a netlist would have it. */
  private String valve() {
    return Printed.of(
        new Quantity(
            Dimension.TEMPERATURE,
            classA.value(),
            (classA.value() + opened.value()) / 2,
            opened.value(),
            CurrentKind.UNSTATED));
  }

  private boolean isSmall(Part.Vessel vessel) {
    return vessel
        .litres()
        .filter(l -> !Comparison.exceeds(l.value().high(), small.value()))
        .isPresent();
  }

  private static Outcome depends(Subject subject, Step step, String what) {
    return subject.undecided(
        "tolerance of opens-at of " + step.name(),
        "%s is set to %s: whether it %s depends on its tolerance."
            .formatted(step.name(), step.band().text(), what));
  }

  private Subject subject(Part.Heater heater, Part.Thermal device, Part.Thermal... others) {
    List<String> at = new ArrayList<>(List.of(device.name()));
    List.of(others).forEach(o -> at.add(o.name()));
    at.add(heater.name());
    return new Subject(facts, device.opensAt().orElseThrow().mark(), at);
  }
}
