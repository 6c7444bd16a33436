package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part.InsulationSpec;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.rule.Measure;
import org.coilwright.solve.InsulationDistances;
import org.coilwright.solve.InsulationDistances.Distance;
import org.coilwright.solve.InsulationDistances.Pollution;
import org.coilwright.table.Cited;

/**
 * What a device's data say about reinforced insulation between its coil and its contacts, or
 * between its poles.
 *
 * @param faults what is written and not enough
 * @param proofs what is written and enough, in words
 * @param isReinforced true if the proofs together show reinforced insulation
 * @param decidingKey the key that would show it
 * @param remark what was assumed, for the end of a sentence; may be empty
 * @param measured a figure to show beside its limit
 * @param figures what the limits rest on
 */
record InsulationGrade(
    List<Fault> faults,
    List<String> proofs,
    boolean isReinforced,
    String decidingKey,
    String remark,
    Optional<Datum> measured,
    List<Cited<Double>> figures) {

  private static final Set<String> ENOUGH = Set.of("reinforced", "double");

  /** Between what the insulation lies. */
  enum Between {
    COIL_AND_CONTACTS("coil-to-contacts", "coil and contacts"),
    POLES("between-poles", "its poles");

    private final String key;
    private final String words;

    Between(String key, String words) {
      this.key = key;
      this.words = words;
    }

    private Optional<Written<String>> stated(InsulationSpec spec) {
      return this == POLES ? spec.betweenPoles() : spec.coilToContacts();
    }
  }

  /** Something that is not enough. */
  record Fault(Mark mark, String label, String why, Optional<Datum> datum) {}

  /**
   * A written figure and what it has to reach, in the base unit of its dimension.
   *
   * @param from what the limit rests on
   */
  record Datum(
      String name,
      Written<Quantity> written,
      double needed,
      Dimension dimension,
      List<Cited<Double>> from) {
    double has() {
      return written.value().low();
    }

    boolean isEnough() {
      return !Comparison.fallsShort(has(), needed);
    }

    Printed.Pair pair() {
      return Printed.pair(has(), needed, dimension);
    }

    Measure value() {
      return new Measure(has(), dimension.baseUnit());
    }

    Measure limit() {
      return new Measure(needed, dimension.baseUnit());
    }

    String proof() {
      return "%s %s (at least %s)".formatted(name, pair().value(), pair().limit());
    }

    Fault fault() {
      return new Fault(
          written.mark(),
          "reinforced needs %s".formatted(pair().limit()),
          "Its %s is %s; reinforced insulation needs %s: short by %s."
              .formatted(name, pair().value(), pair().limit(), pair().apart()),
          Optional.of(this));
    }
  }

  /**
   * Weighs what is written.
   *
   * @param lineToEarth nominal mains voltage to earth, V
   * @param altitude above sea level, m; empty is taken as what the tables hold for, up to 2000 m
   */
  static InsulationGrade of(
      InsulationSpec spec,
      Between between,
      double lineToEarth,
      Optional<Double> altitude,
      InsulationDistances distances,
      TestVoltages tests) {
    double metres = altitude.orElse(0.0);
    boolean high = distances.altitudeFactor(metres).map(f -> f.value() > 1).orElse(true);
    Optional<Distance> clear = distances.reinforcedClearance(lineToEarth, metres);
    Optional<Distance> creep =
        distances.reinforcedCreepage(lineToEarth, metres, Pollution.DEGREE_3);
    Optional<Distance> creepClean =
        distances.reinforcedCreepage(lineToEarth, metres, Pollution.DEGREE_2);

    Optional<Datum> test = test(spec, lineToEarth, distances, tests);
    Optional<Datum> clearance =
        spec.clearance().flatMap(c -> clear.map(d -> distance("clearance", c, d)));
    // The netlist does not tell how dirty it gets: enough is what is enough in switchgear, too
    // little is what is too little even in a tight enclosure.
    Optional<Datum> creepage =
        spec.creepage().flatMap(c -> creep.map(d -> distance("creepage distance", c, d)));
    Optional<Datum> creepageClean =
        spec.creepage().flatMap(c -> creepClean.map(d -> distance("creepage distance", c, d)));

    List<Fault> faults = new ArrayList<>();
    Optional<Written<String>> word = between.stated(spec);
    word.filter(w -> !isReinforced(w)).map(w -> statedFault(w, between)).ifPresent(faults::add);
    List<Datum> tooSmall =
        Stream.of(test, clearance, creepageClean)
            .flatMap(Optional::stream)
            .filter(d -> !d.isEnough())
            .toList();
    tooSmall.forEach(d -> faults.add(d.fault()));

    Optional<String> stated =
        word.filter(InsulationGrade::isReinforced).map(w -> "stated as " + w.text());
    Optional<Datum> tested = test.filter(Datum::isEnough);
    Optional<Datum> wide = clearance.filter(Datum::isEnough);
    Optional<Datum> spaced = creepage.filter(Datum::isEnough);
    // a statement or a test holds for air as it is near sea level; distances hold anywhere
    boolean byStatement = !high && (stated.isPresent() || tested.isPresent());
    boolean byDistance = wide.isPresent() && (stated.isPresent() || spaced.isPresent());
    boolean isShown = byStatement || byDistance;
    List<Datum> shownBy =
        byStatement
            ? tested.stream().toList()
            : Stream.of(wide, spaced).flatMap(Optional::stream).toList();
    List<String> proofs = new ArrayList<>(stated.stream().toList());
    shownBy.forEach(d -> proofs.add(d.proof()));
    return new InsulationGrade(
        List.copyOf(faults),
        List.copyOf(proofs),
        isShown,
        high ? "clearance" : between.key,
        isShown ? assumed(altitude) : shortOf(altitude, high, creepage, test, spec),
        shownBy.stream().findFirst(),
        (faults.isEmpty() ? shownBy : tooSmall).stream().flatMap(d -> d.from().stream()).toList());
  }

  /** True if the word claims reinforced insulation. */
  static boolean isReinforced(Written<String> word) {
    return ENOUGH.contains(word.value().strip().toLowerCase(Locale.ROOT));
  }

  private static Fault statedFault(Written<String> word, Between between) {
    return new Fault(
        word.mark(),
        "reinforced is needed",
        "Its insulation between %s is stated as %s.".formatted(between.words, word.text()),
        Optional.empty());
  }

  private static Datum distance(String name, Written<Quantity> written, Distance needed) {
    return new Datum(name, written, needed.metres(), Dimension.LENGTH, needed.from());
  }

  /**
   * The test voltage is published for one class of mains. Enough there is enough for a lower one;
   * too little there says nothing about a lower one; about a higher one it says nothing at all.
   * What does not even stand the short overvoltages of this mains is too little on any.
   */
  private static Optional<Datum> test(
      InsulationSpec spec, double lineToEarth, InsulationDistances distances, TestVoltages tests) {
    Optional<Datum> least =
        spec.test()
            .map(t -> test(t, tests.least(lineToEarth), tests.leastFrom()))
            .filter(d -> !d.isEnough());
    Optional<Double> here = distances.impulseKilovolts(lineToEarth).map(Cited::value);
    Optional<Double> there =
        distances.impulseKilovolts(tests.publishedFor().value()).map(Cited::value);
    if (here.isEmpty() || there.isEmpty() || here.get() > there.get()) {
      return least;
    }
    return spec.test()
        .map(t -> test(t, tests.published().value(), List.of(tests.published())))
        .filter(d -> d.isEnough() || here.get().equals(there.get()))
        .or(() -> least);
  }

  private static Datum test(Written<Quantity> written, double needed, List<Cited<Double>> from) {
    return new Datum("test voltage", written, needed, Dimension.VOLTAGE, from);
  }

  private static String assumed(Optional<Double> altitude) {
    return altitude.isPresent() ? "" : "; site.altitude is not written and taken as 2000 m at most";
  }

  /** Why what is written and not wrong is not enough either. */
  private static String shortOf(
      Optional<Double> altitude,
      boolean high,
      Optional<Datum> creepage,
      Optional<Datum> test,
      InsulationSpec spec) {
    if (high && altitude.isPresent()) {
      return ": at %s above the sea a statement or a test at sea level no longer shows it"
          .formatted(Printed.of(altitude.get(), Dimension.LENGTH));
    }
    if (creepage.isPresent()) {
      return ": a creepage distance of %s is enough only where it stays clean and dry, elsewhere it takes %s"
          .formatted(creepage.get().pair().value(), creepage.get().pair().limit());
    }
    if (spec.test().isPresent() && test.isEmpty()) {
      return ": a test voltage is published for 230/400 V alone";
    }
    return "";
  }
}
