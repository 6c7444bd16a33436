package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Comparison;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** A closed water vessel can be heated past every manually reset cut-out. */
final class LoadNoCutOut implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("load.no-cut-out", Weight.STOP, "closed vessel without a cut-out that stops it")
          .what(
              "Opens every manually reset cut-out and looks, with outputs and switches closed,"
                  + " whether the element in a closed vessel is still heated: once with the"
                  + " thermostats stuck closed, and once for each relay and contactor welded. A"
                  + " cut-out in a coil's circuit counts only where another contact than the one"
                  + " that may weld then opens. With the thermostats stuck no line may stay on the"
                  + " element, and the cut-out must open at 98 °C or below.")
          .why("Water in a closed vessel that goes on being heated turns to steam and bursts it.")
          .remedy(
              "Put a manually reset cut-out on the vessel and all its poles into the lines of the"
                  + " element, behind every contactor.")
          .blind(
              "Whether the sensor sits where the water is hottest; the relief valve, which has to be"
                  + " there as well; two faults at once.")
          .sources("iec-60335-2-73", "hot-water-storage", "circuit-theory");

  private final Tables tables;

  LoadNoCutOut(Tables tables) {
    this.tables = tables;
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
        outcomes.add(judge(circuit, heater));
      }
    }
    return outcomes;
  }

  private Outcome judge(Circuit circuit, Part.Heater heater) {
    String name = heater.name();
    Subject subject =
        Subject.of(
            FACTS, heater.vessel().map(Part.Vessel::mark).orElse(heater.head().mark()), name);
    Optional<Written<Boolean>> closed = heater.vessel().flatMap(Part.Vessel::closed);
    if (closed.isEmpty()) {
      return subject.undecided(
          heater.vessel().isEmpty() ? "vessel of " + name : "vessel.closed of " + name,
          "Whether %s heats water in a closed vessel is not written; if it does, it needs a manually reset cut-out."
              .formatted(name));
    }
    Basis basis = Basis.of(tables.figure("sizing.cut-out-highest"));
    if (!closed.get().value()) {
      return subject.satisfied(
          "%s heats an open vessel, which cannot burst.".formatted(name), basis);
    }
    List<Part.Thermal> cutOuts = Overheating.thermals(circuit, true);
    List<Part.Thermal> thermostats = Overheating.thermals(circuit, false);
    List<Part.Thermal> manual = cutOuts.stream().filter(c -> resets(c, "manual")).toList();
    List<Part.Thermal> perhaps = cutOuts.stream().filter(c -> !resets(c, "automatic")).toList();
    Optional<String> fault = fault(circuit, heater, manual, thermostats);
    if (fault.isPresent() && fault(circuit, heater, perhaps, thermostats).isEmpty()) {
      Part.Thermal unsaid =
          perhaps.stream().filter(c -> c.reset().isEmpty()).findFirst().orElseThrow();
      return subject.undecided(
          "reset of " + unsaid.name(),
          "Whether %s protects the vessel of %s is open: it must be reset by hand, and that is not written."
              .formatted(unsaid.name(), name));
    }
    if (fault.isPresent() && !manual.isEmpty()) {
      Optional<Feeding.Side> left =
          Overheating.heatingFault(circuit, heater, manual, thermostats).isPresent()
              ? Optional.empty()
              : stays(circuit, heater, manual);
      if (left.isPresent()) {
        return leavesLine(subject, heater, manual, left.get(), basis);
      }
    }
    if (fault.isPresent()) {
      return violated(subject, heater, cutOuts, manual, fault.get(), basis);
    }
    return settings(subject, circuit, heater, manual, thermostats, basis);
  }

  private static boolean resets(Part.Thermal cutOut, String how) {
    return cutOut.reset().map(Written::value).equals(Optional.of(how));
  }

  private static Optional<String> fault(
      Circuit circuit, Part load, List<Part.Thermal> cutOuts, List<Part.Thermal> thermostats) {
    if (cutOuts.isEmpty()) {
      return Optional.of("with the thermostat stuck closed");
    }
    Optional<String> heats = Overheating.heatingFault(circuit, load, cutOuts, thermostats);
    if (heats.isPresent()) {
      return heats.map(h -> "it is heated " + h);
    }
    return stays(circuit, load, cutOuts).map(l -> "%s stays on it".formatted(l));
  }

  /** A line that is on the load with these cut-outs open. */
  private static Optional<Feeding.Side> stays(
      Circuit circuit, Part load, List<Part.Thermal> cutOuts) {
    Set<Feeding.Side> left =
        new Overheating(circuit, Overheating.names(cutOuts), Set.of())
            .at(load)
            .all(Feeding.Kind.LINE);
    return left.stream().findFirst();
  }

  /** No heating fault is left, but one line: an element with an earth fault heats against it. */
  private static Outcome leavesLine(
      Subject subject,
      Part.Heater heater,
      List<Part.Thermal> manual,
      Feeding.Side left,
      Basis basis) {
    String name = heater.name();
    String names = String.join(" and ", manual.stream().map(Part::name).toList());
    Subject.Finding finding =
        subject.violated(
            "%s %s %s on %s".formatted(names, manual.size() == 1 ? "leaves" : "leave", left, name),
            "The heating stops, but an element with an earth fault is still fed from there: all-pole disconnection is asked.",
            "a closed vessel");
    finding.alsoAt(heater.head().mark(), "still fed from %s".formatted(left));
    manual.forEach(c -> finding.alsoAt(c.head().mark(), "does not open every line"));
    return finding.todo(
        "Put a manually reset cut-out into every line of %s, behind every contactor, with its sensor on the vessel."
            .formatted(name),
        basis);
  }

  private static Outcome violated(
      Subject subject,
      Part.Heater heater,
      List<Part.Thermal> cutOuts,
      List<Part.Thermal> manual,
      String fault,
      Basis basis) {
    String name = heater.name();
    String numbers =
        cutOuts.isEmpty()
            ? "%s heats a closed vessel, and there is no cut-out at all.".formatted(name)
            : manual.isEmpty()
                ? "%s heats a closed vessel; %s resets itself and so keeps heating on and off."
                    .formatted(name, cutOuts.get(0).name())
                : "With %s open, %s: what it opens is not enough."
                    .formatted(
                        String.join(" and ", manual.stream().map(Part::name).toList()), fault);
    Subject.Finding finding =
        subject.violated(
            "nothing independent stops %s".formatted(name), numbers, "a closed vessel");
    finding.alsoAt(heater.head().mark(), "can go on heating");
    cutOuts.forEach(
        c ->
            finding.alsoAt(
                c.reset().map(Written::mark).orElse(c.head().mark()),
                resets(c, "manual") ? "does not stop it" : "not by hand"));
    return finding.todo(
        "Put a manually reset cut-out into every line of %s, behind every contactor, with its sensor on the vessel."
            .formatted(name),
        basis);
  }

  /** Enough of them open; now at what temperature. Those that are needed are looked at. */
  private Outcome settings(
      Subject subject,
      Circuit circuit,
      Part.Heater heater,
      List<Part.Thermal> manual,
      List<Part.Thermal> thermostats,
      Basis basis) {
    Cited<Double> most = tables.figure("sizing.cut-out-highest");
    List<Part.Thermal> low =
        manual.stream()
            .filter(c -> c.opensAt().isPresent())
            .filter(c -> !Comparison.exceeds(c.opensAt().get().value().nominal(), most.value()))
            .toList();
    String limit = Printed.of(most.value(), Dimension.TEMPERATURE);
    if (fault(circuit, heater, low, thermostats).isEmpty()) {
      return subject.satisfied(
          "%s open%s every line of %s whatever one contactor or thermostat does, at %s (at most %s)."
              .formatted(
                  String.join(" and ", low.stream().map(Part::name).toList()),
                  low.size() == 1 ? "s" : "",
                  heater.name(),
                  String.join(
                      ", ", low.stream().map(c -> c.opensAt().orElseThrow().text()).toList()),
                  limit),
          basis);
    }
    Optional<Part.Thermal> unsaid = manual.stream().filter(c -> c.opensAt().isEmpty()).findFirst();
    if (unsaid.isPresent()) {
      return subject.undecided(
          "opens-at of " + unsaid.get().name(),
          "Whether %s opens before the water boils is open.".formatted(unsaid.get().name()));
    }
    Part.Thermal high = manual.stream().filter(c -> !low.contains(c)).findFirst().orElseThrow();
    return subject
        .violated(
            "%s opens too late for %s".formatted(high.name(), heater.name()),
            "It opens at %s; the water may reach %s."
                .formatted(high.opensAt().orElseThrow().text(), limit),
            "a closed vessel")
        .alsoAt(high.opensAt().orElseThrow().mark(), "above " + limit)
        .todo("Set or choose a cut-out that opens at %s or below.".formatted(limit), basis);
  }
}
