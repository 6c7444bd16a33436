package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Run;
import org.coilwright.netlist.Site;
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
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A wire's or part's rated voltage is below the voltage it meets. */
final class SeparationInsulationVoltage implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("separation.insulation-voltage", Weight.STOP, "insulation rated too low")
          .what(
              "Holds the insulation of every wire against the voltage it meets at the highest"
                  + " supply: line to line where its run holds two lines, line to earth where it"
                  + " holds one, the supply's own voltage in an extra-low voltage circuit. A"
                  + " relay's rated insulation voltage, where written, is held against the nominal"
                  + " mains, whose tolerance it already allows for.")
          .why("Insulation that is rated too low fails in time: a shock, or a fire.")
          .remedy("Use wire, or a part, rated for the voltage shown.")
          .blind(
              "Surges, heat and damage. Ratings of contacts and poles: the drive and contactor"
                  + " rules look at those.")
          .sources("circuit-theory", "iec-60664-1", "iec-60038");

  private final Cited<Double> elvLimit;
  private final Cited<Double> tolerance;
  private final Cited<Double> roundName;
  private final Basis wireBasis;
  private final Basis partBasis;

  SeparationInsulationVoltage(Tables tables) {
    elvLimit = tables.figure("separation.elv-dc");
    tolerance = tables.figure("supply.mains-high");
    roundName = tables.figure("drive.round-name");
    // a rating as written against a voltage as written: no figure comes in between
    wireBasis = new Basis(List.of(tables.source("circuit-theory").cite()), Standing.PUBLISHED);
    partBasis =
        new Basis(List.of(tables.source("iec-60664-1").cite()), Standing.FROM_MEMORY)
            .and(Basis.of(tolerance));
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    Circuit circuit = study.circuit();
    VoltageBands bands = VoltageBands.of(study, elvLimit.value());
    List<Outcome> outcomes = new ArrayList<>();
    List<Conductor> unrated = new ArrayList<>();
    Map<String, LowInsulation> tooLow = new LinkedHashMap<>();
    for (WireBundle bundle : WireBundle.all(circuit)) {
      if (bundle.wires().get(0).insulation().isEmpty()) {
        unrated.addAll(bundle.wires());
      } else {
        check(circuit, bands, bundle, tooLow).ifPresent(outcomes::add);
      }
    }
    tooLow.values().forEach(low -> outcomes.add(low.finding(FACTS, bands, wireBasis)));
    unrated(bands, unrated).ifPresent(outcomes::add);
    for (Part part : circuit.netlist().parts().values()) {
      if (part instanceof Part.Relay relay) {
        check(bands, circuit, relay).ifPresent(outcomes::add);
      }
    }
    return outcomes;
  }

  private Optional<Outcome> check(
      Circuit circuit, VoltageBands bands, WireBundle bundle, Map<String, LowInsulation> tooLow) {
    Optional<VoltageBands.Met> met = bundle.met(circuit, bands);
    if (met.isEmpty()) {
      return bundle
          .supplyWithoutVoltage(bands)
          .map(
              supply ->
                  Subject.of(FACTS, bundle.insulationMark(), bundle.name())
                      .undecided(
                          supply.missing("voltage"),
                          "The voltage that the insulation of %s meets is not written."
                              .formatted(bundle.name())));
    }
    Conductor wire = bundle.wires().get(0);
    double rated = wire.insulation().map(Quantity::low).orElse(0.0);
    double meets = met.get().highest();
    Printed.Pair pair = Printed.pair(rated, meets, Dimension.VOLTAGE);
    Measure value = new Measure(rated, "V");
    Measure limit = new Measure(meets, "V");
    Subject subject =
        new Subject(FACTS, bundle.insulationMark(), WireBundle.path(bundle.name(), bundle.wires()));
    if (Comparison.fallsShort(rated, meets)) {
      tooLow
          .computeIfAbsent(
              rated + " " + met.get().highest() + " " + met.get().which(),
              alike -> new LowInsulation(rated, met.get(), new ArrayList<>()))
          .bundles()
          .add(bundle);
      return Optional.empty();
    }
    return Optional.of(
        subject.satisfied(
            "%s is rated %s and meets %s at most (%s)."
                .formatted(bundle.name(), pair.value(), pair.limit(), met.get().which()),
            value,
            limit,
            wireBasis));
  }

  private static Optional<Outcome> unrated(VoltageBands bands, List<Conductor> wires) {
    List<Conductor> live =
        wires.stream()
            .filter(w -> bands.onMains(w) || bands.elvAt(w.from()).isPresent())
            .filter(w -> !w.bridge() || !bands.onElv(w.from()))
            .toList();
    if (live.isEmpty()) {
      return Optional.empty();
    }
    List<String> names =
        live.stream()
            .map(
                w ->
                    w.run()
                        .map(Run::name)
                        .orElse(
                            "%s to %s".formatted(w.wire().from().value(), w.wire().to().value())))
            .distinct()
            .toList();
    return Optional.of(
        new Subject(FACTS, live.get(0).mark(), names)
            .undecided(
                "insulation of " + String.join(", ", names),
                "Whether these wires are insulated for the voltage they meet is not written: %s."
                    .formatted(String.join(", ", names))));
  }

  private Optional<Outcome> check(VoltageBands bands, Circuit circuit, Part.Relay relay) {
    Optional<Written<Quantity>> rated = relay.insulation().flatMap(Part.InsulationSpec::voltage);
    List<Branch> live = circuit.branchesOf(relay.name()).stream().filter(bands::onMains).toList();
    if (rated.isEmpty() || live.isEmpty()) {
      return Optional.empty();
    }
    VoltageBands.Met met = bands.met(live);
    double meets =
        Comparison.exceeds(met.highest(), met.nominal() * tolerance.value())
            ? met.highest()
            : met.nominal() / roundName(circuit, met);
    double has = rated.get().value().low();
    Printed.Pair pair = Printed.pair(has, meets, Dimension.VOLTAGE);
    Measure value = new Measure(has, "V");
    Measure limit = new Measure(meets, "V");
    Subject subject = Subject.of(FACTS, rated.get().mark(), relay.name());
    if (Comparison.fallsShort(has, meets)) {
      return Optional.of(
          subject
              .violated(
                  "the insulation of %s is rated too low".formatted(relay.name()),
                  "Its rated insulation voltage is %s and it meets %s: %s too little."
                      .formatted(pair.value(), pair.limit(), pair.apart()),
                  "rated " + pair.value())
              .alsoAt(live.get(0).mark(), "meets " + pair.limit())
              .detail(
                  "The voltage that counts is %s, at the nominal supply: the rating allows for its tolerance."
                      .formatted(met.which()))
              .measured(value, limit)
              .change(rated.get().mark(), pair.limit())
              .todo(
                  "Use a part with a rated insulation voltage of %s or more."
                      .formatted(pair.limit()),
                  partBasis));
    }
    return Optional.of(
        subject.satisfied(
            "The rated insulation voltage of %s is %s; it meets %s."
                .formatted(relay.name(), pair.value(), pair.limit()),
            value,
            limit,
            partBasis));
  }

  /** The 230 V of a 230/400 V network are a little more by computation: its name counts. */
  private double roundName(Circuit circuit, VoltageBands.Met met) {
    return circuit
        .netlist()
        .site()
        .mains()
        .filter(m -> m.phases().value() == Site.Phases.THREE)
        .filter(m -> met.nominal() < m.voltage().value().nominal())
        .map(m -> roundName.value())
        .orElse(1.0);
  }
}
