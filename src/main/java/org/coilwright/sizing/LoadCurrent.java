// Over 250 lines: what a load takes, nominal and at worst, and where that comes from.
package org.coilwright.sizing;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.solve.LoadReading;
import org.coilwright.solve.State;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/**
 * What a load takes, at rated power and nominal voltage and at worst.
 *
 * @param load the load
 * @param amps nominal current by pin
 * @param watts nominal power at the voltage it gets
 * @param volts nominal voltage it is fed with, line to line if it hangs on several lines
 * @param highVolts the same at the supply's highest
 * @param powerFactor what its power may exceed what it says by, as a multiple
 * @param power where {@code powerFactor} comes from; empty if it is one or as written
 * @param band the share by which the mains was taken to rise, as its tolerance is not written
 * @param hertz of its supply, 0 for direct current
 */
public record LoadCurrent(
    Part load,
    Map<String, Double> amps,
    double watts,
    double volts,
    double highVolts,
    double powerFactor,
    Optional<Cited<Double>> power,
    Optional<Cited<Double>> band,
    double hertz) {

  /** A line that loses more than this is no line but a fault. */
  private static final double MOST_LINE_LOSS = 1.25;

  /** Nominal current of the pin that carries most. */
  public double nominal() {
    return amps.values().stream().mapToDouble(a -> a).max().orElse(0);
  }

  /** Nominal current of the fullest pin at the voltage that is left behind the lines, A. */
  public double nominalAt(double gets) {
    double scale = gets > 0 ? volts / gets : 1;
    return scale >= 1 && scale <= MOST_LINE_LOSS ? nominal() / scale : nominal();
  }

  /** Current over the nominal one at worst. */
  public double worstFactor() {
    return powerFactor * (volts > 0 ? highVolts / volts : 1);
  }

  /** Current of the pin that carries most, at worst. */
  public double worst() {
    return nominal() * worstFactor();
  }

  /** What the worst current rests on beside what the netlist says. */
  public List<Cited<Double>> basis() {
    return Stream.concat(power.stream(), band.stream()).toList();
  }

  /** {@code at 253 V and +5 % power}. */
  public String worstWords() {
    String at =
        "at "
            + Printed.volts(highVolts)
            + band.map(b -> " (± %s taken)".formatted(Printed.percent(b.value()))).orElse("");
    return powerFactor > 1 ? at + " and +" + Printed.percent(powerFactor - 1) + " power" : at;
  }

  /**
   * How much more power than rated a heating appliance may take; as written if its power has a
   * tolerance.
   */
  public static Optional<Cited<Double>> tolerance(double watts, Tables tables) {
    if (watts <= tables.figure("sizing.small-heater-up-to").value()) {
      return Optional.of(tables.figure("sizing.small-heater-power-high"));
    }
    Cited<Double> share = tables.figure("poles.heater-power-high");
    Cited<Double> margin = tables.figure("poles.heater-power-least-margin");
    double byMargin = (watts + margin.value()) / watts;
    return Optional.of(byMargin > share.value() ? margin.map(any -> byMargin) : share);
  }

  static Optional<LoadCurrent> of(
      Study study, Part load, List<Branch.Source> sources, Set<Node> lines, Tables tables) {
    Map<String, Double> amps = new LinkedHashMap<>();
    double watts = 0;
    for (State state : study.statesFor(load.name())) {
      if (!study.isShorted(state)) {
        LoadReading reading = study.load(load.name(), state);
        watts = Math.max(watts, reading.watts());
        reading.amps().forEach((pin, a) -> amps.merge(pin, a, Math::max));
      }
    }
    if (watts == 0) {
      rated(study, load, amps);
    }
    boolean heater = load instanceof Part.Heater;
    Optional<Quantity> power = writtenPower(load);
    if (amps.values().stream().noneMatch(a -> a > 0)) {
      return Optional.empty();
    }
    Branch.Source source = sources.get(0);
    Optional<Quantity> supply = supply(study, source, lines);
    double volts = supply.map(Quantity::nominal).orElse(0.0);
    Optional<MainsBand> mains =
        supply
            .filter(any -> !source.isDirect())
            .map(v -> MainsBand.of(v, study.circuit().netlist().site().practice().value(), tables));
    double high =
        mains.map(MainsBand::high).orElseGet(() -> supply.map(Quantity::high).orElse(volts));
    withoutLineLoss(study, load, watts, volts, amps);
    Optional<Cited<Double>> cited = Optional.empty();
    double factor = 1;
    if (power.isPresent() && !power.get().isExact()) {
      factor = power.get().high() / power.get().nominal();
    } else if (heater && power.isPresent()) {
      cited = tolerance(power.get().nominal(), tables);
      factor = cited.map(Cited::value).orElse(1.0);
    }
    double hertz =
        source.isDirect()
            ? 0
            : study
                .circuit()
                .netlist()
                .site()
                .mains()
                .flatMap(Site.MainsSupply::frequency)
                .map(f -> f.value().nominal())
                .orElse(50.0);
    return Optional.of(
        new LoadCurrent(
            load,
            Map.copyOf(amps),
            watts,
            volts,
            high,
            factor,
            cited,
            mains.flatMap(MainsBand::taken),
            hertz));
  }

  /** True for a motor whose current is only known by the power at its shaft. */
  public static boolean isByShaft(Part part) {
    return part instanceof Part.OtherLoad load && load.isByShaft();
  }

  /** The key that would give a load's current: {@code power of E1}, of a motor {@code current}. */
  public static String missing(Part load) {
    return (load.head().is().equals("motor") ? "current of " : "power of ") + load.name();
  }

  /** The voltage of a source, or between the lines of the mains where there are several. */
  static Optional<Quantity> supply(Study study, Branch.Source source, Set<Node> lines) {
    return lines.size() > 1
        ? study.circuit().netlist().site().mains().map(m -> m.voltage().value())
        : source.volts();
  }

  /**
   * What the lines lose is put back: a person redoes the current from power and voltage alone, and
   * a thick short line would come to that. A load on quite another voltage is left as it is.
   */
  private static void withoutLineLoss(
      Study study, Part load, double watts, double volts, Map<String, Double> amps) {
    OptionalDouble rated = ratedWatts(study, load);
    Optional<Written<Quantity>> plate =
        load instanceof Part.Heater heater
            ? heater.voltage()
            : load instanceof Part.OtherLoad other ? other.voltage() : Optional.empty();
    if (rated.isEmpty() || rated.getAsDouble() <= 0 || plate.isEmpty() || watts <= 0) {
      return;
    }
    double gets = plate.get().value().nominal() * Math.sqrt(watts / rated.getAsDouble());
    double scale = volts / gets;
    if (scale >= 1 && scale <= MOST_LINE_LOSS) {
      amps.replaceAll((pin, a) -> a * scale);
    }
  }

  private static Optional<Quantity> writtenPower(Part load) {
    return (load instanceof Part.Heater heater
            ? heater.power()
            : load instanceof Part.OtherLoad other
                ? other.power()
                : Optional.<Written<Quantity>>empty())
        .map(Written::value);
  }

  /** For a load that no state turns on: what its elements say. */
  private static void rated(Study study, Part load, Map<String, Double> amps) {
    List<Branch.LoadElement> elements =
        study.circuit().branchesOf(load.name()).stream()
            .filter(Branch.LoadElement.class::isInstance)
            .map(Branch.LoadElement.class::cast)
            .toList();
    boolean delta = isDelta(elements);
    for (Branch.LoadElement element : elements) {
      if (element.ratedVolts().isPresent() && element.ratedWatts().isPresent()) {
        double a =
            element.ratedWatts().getAsDouble()
                / element.ratedVolts().getAsDouble()
                / element.powerFactor();
        // in a delta two elements share each pin, 60° apart
        double pin = delta ? a * Math.sqrt(3) : a;
        Set<String> pins = new TreeSet<>();
        element.from().terminals().forEach(t -> pins.add(t.pin()));
        element.to().terminals().forEach(t -> pins.add(t.pin()));
        pins.forEach(p -> amps.merge(p, pin, Math::max));
      }
    }
  }

  /** True for three elements that meet in pairs; those of a star all meet in one point. */
  private static boolean isDelta(List<Branch.LoadElement> elements) {
    return elements.size() == 3
        && Stream.of(elements.get(0).from(), elements.get(0).to())
            .noneMatch(
                node ->
                    elements.stream().allMatch(e -> e.from().equals(node) || e.to().equals(node)));
  }

  /** The load's power as its elements add up, W; empty if it is not known. */
  static OptionalDouble ratedWatts(Study study, Part load) {
    return study.circuit().branchesOf(load.name()).stream()
        .filter(Branch.LoadElement.class::isInstance)
        .flatMap(b -> ((Branch.LoadElement) b).ratedWatts().stream().boxed())
        .mapToDouble(w -> w)
        .reduce(Double::sum);
  }

  /** {@code 15.0 A at 440 V and +5 % power}. */
  public String words() {
    return Printed.of(worst(), Dimension.CURRENT) + " " + worstWords();
  }
}
