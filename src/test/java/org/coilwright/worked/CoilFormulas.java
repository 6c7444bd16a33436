package org.coilwright.worked;

import static org.coilwright.worked.Formula.number;
import static org.coilwright.worked.Formula.numbers;
import static org.coilwright.worked.Formula.word;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.coilwright.solve.CableCapacitance;
import org.coilwright.solve.CoilDecay;
import org.coilwright.solve.CoilHeat;
import org.coilwright.solve.CopperLaw;
import org.coilwright.solve.HeldByLine;
import org.coilwright.table.Cited;
import org.coilwright.table.Source;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** Closed formulas about coils, their turn-off and their lines. */
final class CoilFormulas {
  private static final double MILLI = 1e-3;
  private static final double MICRO = 1e-6;
  private static final double THOUSAND = 1000;
  private final Map<String, Formula> byName = new TreeMap<>();
  private final Tables tables;

  private CoilFormulas(Tables tables) {
    this.tables = tables;
    temperature();
    heat();
    decay();
    capacitance();
    heldByLine();
  }

  static Map<String, Formula> all(Tables tables) {
    return new CoilFormulas(tables).byName;
  }

  private void temperature() {
    byName.put(
        "copper.value-at",
        number(in -> copper().at(in.number("value"), in.number("from"), in.number("to"))));
    byName.put(
        "copper.pulls-in",
        word(
            in ->
                in.number("supply")
                        >= copper().at(in.number("pick-up"), in.number("from"), in.number("to"))
                    ? "yes"
                    : "no"));
    byName.put(
        "copper.rise",
        number(
            in ->
                copper().riseFromResistance(in.number("cold"), in.number("hot"), in.number("at"))));
    byName.put("copper.coefficient", number(in -> copper().coefficient(in.number("at"))));
    byName.put(
        "copper.factors",
        numbers(
            in ->
                in.numbers("at").stream()
                    .map(at -> stated(in.number("constant")).ratio(at, in.number("to")))
                    .toList()));
    byName.put(
        "copper.hottest-for-current",
        number(
            in -> {
              // A source that states its own temperature coefficient: k = 1/α - T0.
              double k = 1 / in.number("coefficient") - in.number("from");
              return stated(k)
                  .temperatureFor(in.number("amps") / in.number("least-amps"), in.number("from"));
            }));
  }

  private CopperLaw copper() {
    return CopperLaw.from(tables);
  }

  /** The law with a constant that the example states itself. */
  private static CopperLaw stated(double constant) {
    Source own = new Source("own", "the example itself");
    return new CopperLaw(new Cited<>(constant, own, "", Standing.PUBLISHED));
  }

  private void heat() {
    byName.put(
        "coil-heat.winding",
        number(in -> heat(in).windingCelsius(in.number("volts"), in.number("air"))));
    byName.put(
        "coil-heat.watts", number(in -> heat(in).watts(in.number("volts"), in.number("air"))));
    byName.put(
        "coil-heat.hot-pick-up",
        number(
            in -> heat(in).hotPickUp(in.number("pick-up"), in.number("volts"), in.number("air"))));
  }

  private CoilHeat heat(Inputs in) {
    return new CoilHeat(
        copper(), in.number("ohms"), in.number("from"), in.number("kelvin-per-watt"));
  }

  private void decay() {
    byName.put(
        "decay.clamped-ms",
        number(in -> coil(in).clampedSeconds(in.number("clamp"), in.number("to-amps")) / MILLI));
    byName.put(
        "decay.resistor-ms",
        number(
            in -> coil(in).resistorSeconds(in.number("resistor"), in.number("to-amps")) / MILLI));
    byName.put(
        "decay.resistor-peak", number(in -> coil(in).resistorPeakVolts(in.number("resistor"))));
    byName.put("decay.stored-mj", number(in -> coil(in).storedJoules() / MILLI));
    byName.put(
        "decay.pick-up-ms", number(in -> coil(in).pickUpSeconds(in.number("share")) / MILLI));
    byName.put(
        "decay.switch-clamp",
        numbers(
            in -> {
              double supply = in.number("supply");
              double clamp = in.number("clamp");
              return List.of(
                  coil(in).switchClampSeconds(supply, clamp) / MILLI,
                  coil(in).switchClampJoules(supply, clamp) / MILLI);
            }));
    byName.put(
        "decay.peak-with-resistor",
        number(
            in ->
                new CoilDecay(1, in.number("ohms"), in.number("volts") / in.number("ohms"))
                    .resistorPeakVolts(in.number("resistor"))));
  }

  private static CoilDecay coil(Inputs in) {
    return new CoilDecay(in.number("henry"), in.number("ohms"), in.number("amps"));
  }

  private void capacitance() {
    byName.put(
        "cable-capacitance.metres",
        number(in -> CableCapacitance.longestMetres(holding(in), perKm(in))));
    byName.put(
        "cable-capacitance.momentary-metres",
        number(in -> CableCapacitance.longestMomentaryMetres(shortForm(in), perKm(in))));
    byName.put(
        "cable-capacitance.short-form-metres",
        number(in -> CableCapacitance.longestMetres(shortForm(in), perKm(in))));
    byName.put(
        "cable-capacitance.shunt-ohms",
        number(in -> CableCapacitance.shuntOhms(in.number("microfarad") * MICRO)));
  }

  private void heldByLine() {
    byName.put("held-by-line.volts", number(in -> line(in).volts(nano(in))));
    byName.put(
        "held-by-line.shunt-ohms",
        number(in -> line(in).shuntOhms(nano(in), in.number("left")).orElse(0)));
    byName.put(
        "held-by-line.nanofarad",
        number(in -> line(in).farads(in.number("left")) / MICRO * THOUSAND));
  }

  private static HeldByLine line(Inputs in) {
    double shunt = in.number("shunt");
    return new HeldByLine(
        in.number("volts"),
        in.number("hold"),
        in.number("power-factor"),
        in.number("hertz"),
        in.number("supply"),
        shunt > 0 ? 1 / shunt : 0);
  }

  private static double nano(Inputs in) {
    return in.number("nanofarad") * MICRO / THOUSAND;
  }

  private static double holding(Inputs in) {
    return CableCapacitance.holdingFarads(
        in.number("release"), in.number("hold"), in.number("volts"), in.number("hertz"));
  }

  private static double shortForm(Inputs in) {
    return CableCapacitance.shortFormFarads(in.number("hold"), in.number("volts"));
  }

  private static double perKm(Inputs in) {
    return in.number("microfarad-per-km") * MICRO;
  }
}
