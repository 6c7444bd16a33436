package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Coil;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Branch.Passive;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.CurrentKind;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rewiring;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** Nothing takes the turn-off voltage of a DC coil. */
final class SuppressionMissing implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("suppression.missing", Weight.FIX, "DC coil without suppression")
          .what(
              "Looks for a diode, varistor, snubber or resistor across each DC coil that a contact"
                  + " switches, wired or built in, or a varistor or snubber across that contact. A"
                  + " resistor counts if the peak it leaves, coil current times resistance, stays"
                  + " below what a bare coil can reach.")
          .why(
              "When the contact opens, the coil drives its current on: the voltage rises until an"
                  + " arc forms or electronics break down. The contact wears out early, and"
                  + " controllers beside it are disturbed.")
          .remedy(
              "Put a diode across the coil, at the coil, cathode to plus; or a varistor or a diode"
                  + " with a zener where it must release fast.")
          .blind(
              "The peak of a bare coil cannot be computed: the figures are a published order and"
                  + " a reading. Suppressors inside an output. Whether a snubber is large enough.")
          .sources("relay-application-notes", "coil-suppression-relay-note", "reed-contact-notes")
          .consequenceOf("coil.wrong-current-kind");

  private final Cited<Double> tolerance;
  private final Basis practice;
  private final Cited<Double> multiple;
  private final Cited<Double> readLow;
  private final Cited<Double> readHigh;

  SuppressionMissing(Tables tables) {
    tolerance = tables.figure("coil.resistance-tolerance");
    practice =
        new Basis(List.of(tables.source("relay-application-notes").cite()), Standing.PUBLISHED);
    multiple = tables.figure("suppression.bare-peak-multiple");
    readLow = tables.figure("suppression.bare-peak-low");
    readHigh = tables.figure("suppression.bare-peak-high");
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    List<Outcome> outcomes = new ArrayList<>();
    CoilWiring wiring = CoilWiring.of(study, tolerance.value());
    for (FedCoil feed : wiring.fed()) {
      if (feed.kind() == CurrentKind.DC && !feed.sources().isEmpty() && feed.isSwitched()) {
        outcomes.add(check(wiring, feed));
      }
    }
    return outcomes;
  }

  private Outcome check(CoilWiring wiring, FedCoil feed) {
    Coil coil = feed.coil();
    AcrossCoil across = wiring.across(coil);
    Subject subject = Subject.of(FACTS, coil.mark(), coil.part());
    if (across.hasAnyBuiltIn()) {
      return subject.satisfied(
          "%s has its suppressor built in (%s)."
              .formatted(coil.part(), across.builtIn().map(Written::value).orElse("")),
          practice);
    }
    Optional<Branch> found = TurnOff.suppressor(wiring, coil);
    if (found.isPresent()) {
      return found.get() instanceof Passive p && p.spec() instanceof Part.Resistor resistor
          ? checkResistor(feed, resistor)
          : subject.satisfied(
              "%s takes the turn-off voltage of %s.".formatted(found.get().part(), coil.part()),
              practice);
    }
    if (across.builtIn().isEmpty()) {
      return subject.undecided(
          "coil.suppression of " + coil.part(),
          "Nothing is wired across the coil of %s, and whether something is built in is not written."
              .formatted(coil.part()));
    }
    return bare(feed, across);
  }

  private Outcome checkResistor(FedCoil feed, Part.Resistor resistor) {
    Coil coil = feed.coil();
    Subject subject = Subject.of(FACTS, resistor.head().mark(), resistor.name(), coil.part());
    if (resistor.resistance().isEmpty()) {
      return subject.undecided(
          "resistance of " + resistor.name(),
          "The peak that %s leaves across %s is open.".formatted(resistor.name(), coil.part()));
    }
    OptionalDouble amps = feed.mostAmps();
    OptionalDouble bound = barePeak(feed);
    if (amps.isEmpty() || bound.isEmpty()) {
      return subject.undecided(
          unknownOf(feed),
          "The peak across %s follows from the coil's current, which is open."
              .formatted(coil.part()));
    }
    double ohms = resistor.resistance().get().value().high();
    double peak = amps.getAsDouble() * ohms;
    Printed.Pair pair = Printed.pair(peak, bound.getAsDouble(), Dimension.VOLTAGE);
    Measure value = new Measure(peak, "V");
    Measure limit = new Measure(bound.getAsDouble(), "V");
    if (Comparison.exceeds(peak, bound.getAsDouble())) {
      return subject
          .violated(
              "%s is too large to suppress %s".formatted(resistor.name(), coil.part()),
              "It lets the turn-off voltage rise to %s, where a bare coil can reach %s: %s above it."
                  .formatted(pair.value(), pair.limit(), pair.apart()),
              "%s across the coil".formatted(Printed.of(ohms, Dimension.RESISTANCE)))
          .alsoAt(coil.mark(), "drives up to " + Printed.amps(amps.getAsDouble()) + " on")
          .detail("The peak is the coil's current times the resistance.")
          .measured(value, limit)
          .todo(
              "Put a diode across %s, cathode to plus, or a smaller resistor."
                  .formatted(coil.part()),
              Basis.of(multiple));
    }
    return subject.satisfied(
        "%s holds the turn-off voltage of %s to %s; bare it can reach %s."
            .formatted(resistor.name(), coil.part(), pair.value(), pair.limit()),
        value,
        limit,
        Basis.of(multiple));
  }

  private Outcome bare(FedCoil feed, AcrossCoil across) {
    Coil coil = feed.coil();
    OptionalDouble peak = barePeak(feed);
    String order =
        peak.isEmpty()
            ? ""
            : " The turn-off voltage can reach %s (%s times the highest supply voltage); %s to %s were read on a 12 V relay."
                .formatted(
                    Printed.volts(peak.getAsDouble()),
                    Printed.of(multiple.value(), Dimension.COUNT),
                    Printed.volts(readLow.value()),
                    Printed.volts(readHigh.value()));
    Subject.Finding finding =
        Subject.of(FACTS, across.builtIn().map(Written::mark).orElse(coil.mark()), coil.part())
            .violated(
                "nothing takes the turn-off voltage of %s".formatted(coil.part()),
                "No diode, varistor, snubber or resistor lies across its coil." + order,
                "and nothing is built in")
            .alsoAt(coil.mark(), "the coil drives its current on");
    for (Contact contact : TurnOff.opensAgainst(feed)) {
      finding.alsoAt(contact.mark(), "opens against it" + contactRating(contact));
      TurnOff.ratedVolts(contact)
          .ifPresent(
              rated ->
                  peak.ifPresent(
                      volts -> finding.measured(new Measure(volts, "V"), new Measure(rated, "V"))));
    }
    Netlist netlist = feed.wiring().circuit().netlist();
    feed.plusEnd()
        .ifPresent(
            plus ->
                finding.change(
                    Rewiring.across(
                        netlist,
                        Rewiring.free(netlist, "V"),
                        "is: diode",
                        List.of("K", "A"),
                        List.of(plus.toString(), feed.otherThan(plus).toString()))));
    return finding
        .detail("An order, not a prediction: the arc decides.")
        .todo(
            "Put a diode across %s, at the coil: cathode to %s, anode to %s."
                .formatted(
                    coil.part(),
                    feed.plusEnd().map(Object::toString).orElse("plus"),
                    feed.plusEnd().map(p -> feed.otherThan(p).toString()).orElse("minus")),
            Basis.of(multiple, readLow, readHigh));
  }

  /** What a bare coil on this supply can reach; empty if its voltage is unknown. */
  private OptionalDouble barePeak(FedCoil feed) {
    return feed.direct().flatMap(Branch.Source::volts).stream()
        .mapToDouble(v -> v.high() * multiple.value())
        .findFirst();
  }

  private static String unknownOf(FedCoil feed) {
    return feed.ohms().isEmpty() ? "coil.resistance of " + feed.coil().part() : feed.voltageKey();
  }

  private static String contactRating(Contact contact) {
    OptionalDouble rated = TurnOff.ratedVolts(contact);
    return rated.isEmpty() ? "" : ", rated for " + Printed.volts(rated.getAsDouble());
  }
}
