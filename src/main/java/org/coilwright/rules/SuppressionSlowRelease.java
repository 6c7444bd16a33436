package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.coilwright.circuit.Branch.Coil;
import org.coilwright.netlist.Part;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.CurrentKind;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
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

/** A suppressor makes a DC coil release much later than it would bare. */
final class SuppressionSlowRelease implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("suppression.slow-release", Weight.NOTE, "slow release")
          .what(
              "Computes from the coil's time constant how long its current lasts at worst with the"
                  + " suppressor, supply high and coil cold, until the armature surely lets go,"
                  + " adds the release time of a bare small relay, and raises a sum of more than"
                  + " twice the bare time.")
          .why(
              "The contact opens slowly: a load with an arc or an inrush wears it, and it may weld"
                  + " now and then. The load also stays on for that much longer.")
          .remedy(
              "Where it matters, put a zener of about the supply's voltage in series with the"
                  + " diode, or use a varistor.")
          .blind(
              "The inductance falls while the armature opens, and most armatures let go before"
                  + " they must: the time is an upper bound, good for comparing suppressors.")
          .sources("circuit-theory", "relay-application-notes")
          .consequenceOf("suppression.reversed", "coil.reversed", "coil.wrong-current-kind");

  private final Tables tables;
  private final Cited<Double> tolerance;
  private final Cited<Double> multiple;
  private final Cited<Double> bareSeconds;
  private final Cited<Double> diodeDrop;
  private final Cited<Double> varistorExtra;

  SuppressionSlowRelease(Tables tables) {
    this.tables = tables;
    tolerance = tables.figure("coil.resistance-tolerance");
    multiple = tables.figure("suppression.slow-release-multiple");
    bareSeconds = tables.figure("suppression.bare-release-time");
    diodeDrop = tables.figure("suppression.diode-forward-drop");
    varistorExtra = tables.figure("suppression.varistor-release-extra");
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
      AcrossCoil across = wiring.across(feed.coil());
      boolean suppressed =
          across.hasAnyBuiltIn() || !across.diodes().isEmpty() || !across.others().isEmpty();
      if (feed.kind() == CurrentKind.DC && !feed.sources().isEmpty() && suppressed) {
        outcomes.add(check(study, feed, across));
      }
    }
    return outcomes;
  }

  private Outcome check(Study study, FedCoil feed, AcrossCoil across) {
    Coil coil = feed.coil();
    Subject subject = Subject.of(FACTS, coil.mark(), coil.part());
    ReleaseDelay.Figures figures =
        new ReleaseDelay.Figures(diodeDrop, varistorExtra, ReleaseDelay.Cold.of(study, tables));
    Optional<String> missing = ReleaseDelay.missing(study, feed, across);
    if (missing.isPresent()) {
      return subject.undecided(
          missing.get(),
          "How late %s releases with its suppressor is open.".formatted(coil.part()));
    }
    ReleaseDelay delay = ReleaseDelay.of(study, feed, across, figures);
    double bare = bareSeconds.value();
    double whole = bare + delay.seconds();
    double limit = bare * multiple.value();
    Printed.Pair pair = Printed.pair(whole, limit, Dimension.TIME);
    Measure value = new Measure(whole, "s");
    Measure held = new Measure(limit, "s");
    Basis basis = delay.basis().and(Basis.of(bareSeconds, multiple));
    if (Comparison.exceeds(whole, limit)) {
      return subject
          .violated(
              "%s releases late".formatted(coil.part()),
              "With %s its current lasts up to %s longer; with the %s that it takes bare it releases after %s, and twice bare is %s."
                  .formatted(
                      delay.by(),
                      Printed.of(delay.seconds(), Dimension.TIME),
                      Printed.of(bare, Dimension.TIME),
                      pair.value(),
                      pair.limit()),
              "its current lasts up to %s longer"
                  .formatted(Printed.of(delay.seconds(), Dimension.TIME)))
          .alsoAt(delay.mark(), "keeps the current going")
          .detail(
              "Worst case: supply at its highest, coil at its coldest and of least resistance; with"
                  + " the time constant as written, which falls while the armature opens.")
          .measured(value, held)
          .todo(whatToDo(study, coil.part()), basis);
    }
    return subject.satisfied(
        "With %s the current of %s lasts up to %s longer (supply high, coil cold): released after %s, not more than twice the bare time (%s)."
            .formatted(
                delay.by(),
                coil.part(),
                Printed.of(delay.seconds(), Dimension.TIME),
                pair.value(),
                pair.limit()),
        value,
        held,
        basis);
  }

  private static String whatToDo(Study study, String relay) {
    List<Part> loads = Loads.behind(study, relay);
    return !loads.isEmpty() && loads.stream().allMatch(Part.Heater.class::isInstance)
        ? "Leave it: %s switches nothing but heating (%s), which does not mind."
            .formatted(relay, loads.stream().map(Part::name).collect(Collectors.joining(", ")))
        : "Leave it if the contact only switches a heating element; for motors, lamps or"
            + " inductive loads put a zener in series with the diode.";
  }
}
