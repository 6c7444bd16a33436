package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** A water vessel can be heated past every manually reset cut-out. */
final class LoadNoCutOut implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("load.no-cut-out", Weight.STOP, "closed vessel without a cut-out that stops it")
          .what(
              "Opens every manually reset cut-out and looks, with outputs and switches closed,"
                  + " whether the element in a closed vessel is still heated: once with the"
                  + " thermostats stuck closed, and once for each relay and contactor welded. A"
                  + " cut-out in a coil's circuit counts only where another contact than the one"
                  + " that may weld then opens. With the thermostats stuck no line may stay on the"
                  + " element, and the cut-out must have opened below 100 °C, its tolerance counted"
                  + " (± 5 K where none is written). An open vessel needs one as well (FIX) where"
                  + " the cistern or the vessel itself is of plastic, which hot water softens, or"
                  + " no open vent leads the steam away.")
          .why(
              "Water in a closed vessel that goes on being heated turns to steam and bursts it. An"
                  + " open one boils over, and a plastic cistern above it softens and falls.")
          .remedy(
              "Put a manually reset cut-out on the vessel and all its poles into the lines of the"
                  + " element, behind every contactor.")
          .blind(
              "Whether the sensor sits where the water is hottest; the relief valve, which has to"
                  + " be there as well; two faults at once.")
          .sources("hot-water-storage", "common-practice", "circuit-theory")
          .consequenceOf("load.limit-wrong-form");

  private final Cited<Double> most;
  private final Cited<Double> tolerance;

  LoadNoCutOut(Tables tables) {
    most = tables.figure("sizing.cut-out-highest");
    tolerance = tables.figure("sizing.thermal-tolerance");
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
        outcomes.add(judge(circuit, Overheating.of(study, heater), heater));
      }
    }
    return outcomes;
  }

  private Outcome judge(Circuit circuit, Overheating heating, Part.Heater heater) {
    String name = heater.name();
    List<Part.Thermal> cutOuts = heating.guards(true);
    Subject subject = Overheating.subject(FACTS, heater, cutOuts);
    List<Part.Thermal> manual = cutOuts.stream().filter(c -> resets(c, "manual")).toList();
    List<Part.Thermal> perhaps = cutOuts.stream().filter(c -> !resets(c, "automatic")).toList();
    VesselNeed need = VesselNeed.of(heater);
    CutOutTrial trial = new CutOutTrial(heating, heater, need, heating.guards(false));
    Optional<String> fault = trial.fault(manual);
    boolean asked = !need.isOpen() || fault.isPresent();
    if (asked && need.missing().isPresent()) {
      return subject.undecided(need.missing().get(), need.words());
    }
    if (asked && need.weight().isEmpty()) {
      return subject.satisfied(need.words(), Basis.of(most));
    }
    if (fault.isPresent() && trial.fault(perhaps).isEmpty()) {
      Part.Thermal unsaid =
          perhaps.stream().filter(c -> c.reset().isEmpty()).findFirst().orElseThrow();
      return subject.undecided(
          "reset of " + unsaid.name(),
          "Whether %s protects the vessel of %s is open: it must be reset by hand, and that is not written."
              .formatted(unsaid.name(), name));
    }
    if (fault.isPresent() && !manual.isEmpty()) {
      Optional<Feeding.Side> left = trial.lineLeft(manual);
      if (left.isPresent()) {
        return leavesLine(circuit, subject, heater, manual, left.get(), need);
      }
    }
    if (fault.isPresent()) {
      return violated(subject, heater, cutOuts, manual, fault.get(), need);
    }
    return settings(subject, trial, manual);
  }

  private static boolean resets(Part.Thermal cutOut, String how) {
    return cutOut.reset().map(Written::value).equals(Optional.of(how));
  }

  /** No heating fault is left, but one line: an element with an earth fault heats against it. */
  private Outcome leavesLine(
      Circuit circuit,
      Subject subject,
      Part.Heater heater,
      List<Part.Thermal> manual,
      Feeding.Side left,
      VesselNeed need) {
    String name = heater.name();
    String names = String.join(" and ", manual.stream().map(Part::name).toList());
    String way =
        WayBack.kept(
            circuit, left, name, b -> manual.stream().anyMatch(c -> c.name().equals(b.part())));
    Subject.Finding finding =
        subject.violated(
            "%s %s %s on %s".formatted(names, manual.size() == 1 ? "leaves" : "leave", left, name),
            "The heating stops, but an element with an earth fault is still fed from there (%s): all-pole disconnection is asked."
                .formatted(way),
            need.label());
    finding.alsoAt(heater.head().mark(), "still fed from %s".formatted(left));
    manual.forEach(c -> finding.alsoAt(c.head().mark(), "does not open every line"));
    return finding.todo(
        "Put a manually reset cut-out into every line of %s, behind every contactor, with its sensor on the vessel."
            .formatted(name),
        Basis.of(most));
  }

  private Outcome violated(
      Subject subject,
      Part.Heater heater,
      List<Part.Thermal> cutOuts,
      List<Part.Thermal> manual,
      String fault,
      VesselNeed need) {
    String name = heater.name();
    String numbers =
        cutOuts.isEmpty()
            ? "%s, and there is no cut-out at all.".formatted(need.words())
            : manual.isEmpty()
                ? "%s; %s resets itself and so keeps heating on and off."
                    .formatted(need.words(), cutOuts.get(0).name())
                : "With %s open, %s: what it opens is not enough."
                    .formatted(
                        String.join(" and ", manual.stream().map(Part::name).toList()), fault);
    Subject.Finding finding =
        subject.violated("nothing independent stops %s".formatted(name), numbers, need.label());
    need.weight().filter(w -> w != FACTS.weight()).ifPresent(finding::lighter);
    finding.alsoAt(heater.head().mark(), "can go on heating");
    cutOuts.forEach(
        c ->
            finding.alsoAt(
                c.reset().map(Written::mark).orElse(c.head().mark()),
                resets(c, "manual") ? "does not stop it" : "not by hand"));
    return finding.todo(
        "Put a manually reset cut-out into every line of %s, behind every contactor, with its sensor on the vessel."
            .formatted(name),
        Basis.of(most));
  }

  /** Enough of them open; now at what temperature. Those that are needed are looked at. */
  private Outcome settings(Subject subject, CutOutTrial trial, List<Part.Thermal> manual) {
    Part.Heater heater = trial.heater();
    VesselNeed need = trial.need();
    List<Part.Thermal> surely = manual.stream().filter(c -> opensBelow(c, true)).toList();
    String limit = Printed.of(most.value(), Dimension.TEMPERATURE);
    if (trial.fault(surely).isEmpty()) {
      return subject.satisfied(
          "%s open%s every line of %s whatever one contactor or thermostat does, at %s (below %s)."
              .formatted(
                  String.join(" and ", surely.stream().map(Part::name).toList()),
                  surely.size() == 1 ? "s" : "",
                  heater.name(),
                  String.join(", ", surely.stream().map(c -> band(c).orElseThrow().by()).toList()),
                  limit),
          basis(surely));
    }
    Optional<Part.Thermal> unsaid = manual.stream().filter(c -> c.opensAt().isEmpty()).findFirst();
    if (unsaid.isPresent()) {
      return subject.undecided(
          "opens-at of " + unsaid.get().name(),
          "Whether %s opens before the water boils is open.".formatted(unsaid.get().name()));
    }
    Part.Thermal late = trial.late(manual, surely);
    List<Part.Thermal> perhaps = manual.stream().filter(c -> opensBelow(c, false)).toList();
    if (trial.fault(perhaps).isEmpty()) {
      Part.Thermal loose = trial.late(perhaps, surely);
      return subject.undecided(
          "tolerance of opens-at of " + loose.name(),
          "%s is set to %s: whether it has opened below %s depends on its tolerance."
              .formatted(loose.name(), loose.opensAt().orElseThrow().text(), limit));
    }
    Subject.Finding finding =
        subject.violated(
            "%s opens too late for %s".formatted(late.name(), heater.name()),
            "It opens at %s; the water must stay below %s."
                .formatted(band(late).orElseThrow().by(), limit),
            need.label());
    need.weight().filter(w -> w != FACTS.weight()).ifPresent(finding::lighter);
    return finding
        .alsoAt(late.opensAt().orElseThrow().mark(), "not surely below " + limit)
        .change(
            late.opensAt().orElseThrow().mark(),
            band(late)
                .orElseThrow()
                .at(
                    most.value()
                        - 1
                        - band(late).orElseThrow().written().high()
                        + band(late).orElseThrow().written().nominal()))
        .todo(
            "Fit a cut-out that has opened below %s, its tolerance counted.".formatted(limit),
            basis(List.of(late)));
  }

  /** The usual tolerance is rested on only where none is written. */
  private Basis basis(List<Part.Thermal> cutOuts) {
    boolean taken = cutOuts.stream().anyMatch(c -> band(c).orElseThrow().isTaken());
    return taken ? Basis.of(most, tolerance) : Basis.of(most);
  }

  private Optional<OpeningBand> band(Part.Thermal cutOut) {
    return OpeningBand.of(cutOut, tolerance);
  }

  /** True if it has opened below the limit: for sure, or if it keeps to what is written. */
  private boolean opensBelow(Part.Thermal cutOut, boolean surely) {
    return band(cutOut)
        .filter(b -> Comparison.fallsShort(surely ? b.highest() : b.written().high(), most.value()))
        .isPresent();
  }
}
