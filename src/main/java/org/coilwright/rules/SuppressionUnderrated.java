package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Coil;
import org.coilwright.circuit.Branch.DiodeBranch;
import org.coilwright.circuit.Branch.Passive;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.CurrentKind;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A suppressor's own rating is too small for the coil it lies across. */
final class SuppressionUnderrated implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("suppression.underrated", Weight.FIX, "suppressor rated too small")
          .what(
              "Holds a diode's reverse voltage against a multiple of the highest supply voltage"
                  + " (three times at extra-low voltage, ten times above) and its current against"
                  + " the most the coils under it draw; a varistor's clamping voltage against the"
                  + " highest crest of the supply, also of one that is built into the coil; a"
                  + " resistor's power against what it turns to heat while the coil is on.")
          .why(
              "A suppressor that is too small fails, as a short-circuit or unnoticed: then the coil"
                  + " is bare.")
          .remedy("Use a suppressor with the rating shown, or more.")
          .blind(
              "The energy a varistor takes at each switching, a snubber's voltage class, and heat"
                  + " at many operations a minute.")
          .sources("relay-application-notes", "iec-60364-4-41", "circuit-theory")
          .consequenceOf("suppression.reversed", "suppression.diode-on-ac");

  private final Cited<Double> tolerance;
  private final Cited<Double> highest;
  private final Cited<Double> multiple;
  private final Cited<Double> multipleElv;
  private final Cited<Double> currentMultiple;
  private final Cited<Double> clampMultiple;
  private final Basis theory;

  SuppressionUnderrated(Tables tables) {
    tolerance = tables.figure("coil.resistance-tolerance");
    highest = tables.figure("separation.elv-dc");
    multiple = tables.figure("suppression.reverse-voltage-multiple");
    multipleElv = tables.figure("suppression.reverse-voltage-multiple-elv");
    currentMultiple = tables.figure("suppression.forward-current-multiple");
    clampMultiple = tables.figure("suppression.zener-voltage-multiple");
    theory = new Basis(List.of(tables.source("circuit-theory").cite()), Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    List<Outcome> outcomes = new ArrayList<>();
    Circuit circuit = study.circuit();
    CoilWiring wiring = CoilWiring.of(study, tolerance.value());
    for (DiodeBranch diode : circuit.branches(DiodeBranch.class)) {
      List<FedCoil> coils = fed(wiring, diode);
      if (!coils.isEmpty() && coils.get(0).kind() == CurrentKind.DC) {
        outcomes.add(reverseVoltage(diode, coils.get(0)));
        outcomes.add(current(diode, coils));
      }
    }
    for (Coil coil : circuit.branches(Coil.class)) {
      FedCoil feed = wiring.fed(coil);
      Optional<Written<Quantity>> clamp = coil.spec().clampingVoltage();
      if (!feed.sources().isEmpty()
          && clamp.isPresent()
          && coil.spec()
              .suppression()
              .filter(s -> s.value().equals(AcrossCoil.VARISTOR))
              .isPresent()) {
        outcomes.add(
            clamping(coil.part(), "the varistor in " + coil.part(), clamp, coil.mark(), feed));
      }
    }
    for (Passive part : circuit.branches(Passive.class)) {
      List<FedCoil> coils = fed(wiring, part);
      if (!coils.isEmpty() && part.spec() instanceof Part.Varistor varistor) {
        outcomes.add(
            clamping(
                varistor.name(),
                varistor.name(),
                varistor.clampingVoltage(),
                varistor.head().mark(),
                coils.get(0)));
      }
      if (!coils.isEmpty() && part.spec() instanceof Part.Resistor resistor) {
        outcomes.add(power(resistor, coils.get(0)));
      }
    }
    return outcomes;
  }

  private static List<FedCoil> fed(CoilWiring wiring, Branch suppressor) {
    return wiring.under(suppressor).stream()
        .map(wiring::fed)
        .filter(feed -> !feed.sources().isEmpty())
        .toList();
  }

  /** The voltage that lies across a coil at most: of its source, crest value on AC. */
  private static OptionalDouble crest(FedCoil feed) {
    double share = feed.kind() == CurrentKind.AC ? Math.sqrt(2) : 1;
    return feed.sources().stream()
        .flatMap(s -> s.volts().stream())
        .mapToDouble(v -> v.high() * share)
        .max();
  }

  private Outcome reverseVoltage(DiodeBranch diode, FedCoil feed) {
    String key = "reverse-voltage of " + diode.part();
    Subject subject = Subject.of(FACTS, mark(diode, diode.spec().reverseVoltage()), diode.part());
    OptionalDouble volts = crest(feed);
    if (diode.spec().reverseVoltage().isEmpty() || volts.isEmpty()) {
      return subject.undecided(
          diode.spec().reverseVoltage().isEmpty() ? key : feed.voltageKey(),
          "Whether %s withstands the supply is open.".formatted(diode.part()));
    }
    Cited<Double> times = volts.getAsDouble() <= highest.value() ? multipleElv : multiple;
    return judge(
        new SuppressorRating(
            subject,
            diode.part(),
            diode.spec().reverseVoltage().get(),
            times.value() * volts.getAsDouble(),
            Dimension.VOLTAGE,
            "reverse voltage",
            "%s times the highest supply voltage, %s"
                .formatted(
                    Printed.of(times.value(), Dimension.COUNT),
                    Printed.volts(volts.getAsDouble()))),
        feed,
        Basis.of(times, highest));
  }

  private Outcome current(DiodeBranch diode, List<FedCoil> coils) {
    Subject subject = Subject.of(FACTS, mark(diode, diode.spec().current()), diode.part());
    if (diode.spec().current().isEmpty()) {
      return subject.undecided(
          "current of " + diode.part(),
          "Whether %s carries the coil's current is open.".formatted(diode.part()));
    }
    double sum = 0;
    for (FedCoil feed : coils) {
      OptionalDouble amps = feed.mostAmps();
      if (amps.isEmpty()) {
        return subject.undecided(
            feed.ohms().isEmpty() ? "coil.resistance of " + feed.coil().part() : feed.voltageKey(),
            "Whether %s carries the current of %s is open."
                .formatted(diode.part(), feed.coil().part()));
      }
      sum += amps.getAsDouble();
    }
    return judge(
        new SuppressorRating(
            subject,
            diode.part(),
            diode.spec().current().get(),
            sum * currentMultiple.value(),
            Dimension.CURRENT,
            "current",
            "the most that %s can draw"
                .formatted(String.join(", ", coils.stream().map(f -> f.coil().part()).toList()))),
        coils.get(0),
        Basis.of(currentMultiple, tolerance));
  }

  private Outcome clamping(
      String part, String named, Optional<Written<Quantity>> clamp, Mark otherwise, FedCoil feed) {
    Subject subject = Subject.of(FACTS, clamp.map(Written::mark).orElse(otherwise), part);
    OptionalDouble volts = crest(feed);
    if (clamp.isEmpty() || volts.isEmpty()) {
      return subject.undecided(
          clamp.isEmpty() ? "clamping-voltage of " + part : feed.voltageKey(),
          "Whether %s stays out of the way of the supply is open.".formatted(part));
    }
    return judge(
        new SuppressorRating(
            subject,
            named,
            clamp.get(),
            volts.getAsDouble() * clampMultiple.value(),
            Dimension.VOLTAGE,
            "clamping voltage",
            "the highest the supply puts across it"),
        feed,
        Basis.of(clampMultiple));
  }

  private Outcome power(Part.Resistor resistor, FedCoil feed) {
    Subject subject =
        Subject.of(
            FACTS,
            resistor.power().map(Written::mark).orElse(resistor.head().mark()),
            resistor.name());
    OptionalDouble volts =
        feed.sources().stream().flatMap(s -> s.volts().stream()).mapToDouble(Quantity::high).max();
    boolean noOhms = resistor.resistance().map(r -> r.value().low() <= 0).orElse(true);
    if (noOhms || resistor.power().isEmpty() || volts.isEmpty()) {
      return subject.undecided(
          noOhms
              ? "resistance of " + resistor.name()
              : resistor.power().isEmpty() ? "power of " + resistor.name() : feed.voltageKey(),
          "Whether %s stands the heat while the coil is on is open.".formatted(resistor.name()));
    }
    double ohms = resistor.resistance().get().value().low();
    return judge(
        new SuppressorRating(
            subject,
            resistor.name(),
            resistor.power().get(),
            volts.getAsDouble() * volts.getAsDouble() / ohms,
            Dimension.POWER,
            "power",
            "what it turns to heat at %s".formatted(Printed.volts(volts.getAsDouble()))),
        feed,
        theory);
  }

  private static Outcome judge(SuppressorRating rating, FedCoil feed, Basis basis) {
    return rating.outcome(feed, basis);
  }

  private static Mark mark(DiodeBranch diode, Optional<Written<Quantity>> written) {
    return written.map(Written::mark).orElse(diode.mark());
  }
}
