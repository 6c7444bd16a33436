package org.coilwright.worked;

import static org.coilwright.worked.Formula.number;
import static org.coilwright.worked.Formula.numbers;
import static org.coilwright.worked.Formula.word;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.coilwright.solve.AcCoil;
import org.coilwright.solve.ArmatureBand;
import org.coilwright.solve.CableCapacitance;
import org.coilwright.solve.CoilDecay;
import org.coilwright.solve.CoilHeat;
import org.coilwright.solve.ContactCapacity;
import org.coilwright.solve.ControlLineLength;
import org.coilwright.solve.CopperLaw;
import org.coilwright.solve.SnubberLeakage;
import org.coilwright.solve.SupplyDemand;
import org.coilwright.table.Cited;
import org.coilwright.table.Source;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** Formulas about coils, their contacts, suppression and lines. */
final class CoilFormulas {
  private static final double MILLI = 1e-3;
  private static final double MICRO = 1e-6;
  private final Map<String, Formula> byName = new TreeMap<>();
  private final CopperLaw copper;

  private CoilFormulas(Tables tables) {
    copper = CopperLaw.from(tables);
    temperature();
    armature();
    decay();
    alternating();
    lines();
    contacts();
  }

  static Map<String, Formula> all(Tables tables) {
    return new CoilFormulas(tables).byName;
  }

  private void temperature() {
    byName.put(
        "copper.value-at",
        number(in -> copper.at(in.number("value"), in.number("from"), in.number("to"))));
    byName.put(
        "copper.pulls-in",
        word(
            in ->
                in.number("supply")
                        >= copper.at(in.number("pick-up"), in.number("from"), in.number("to"))
                    ? "yes"
                    : "no"));
    byName.put(
        "copper.rise",
        number(
            in -> copper.riseFromResistance(in.number("cold"), in.number("hot"), in.number("at"))));
    byName.put("copper.coefficient", number(in -> copper.coefficient(in.number("at"))));
    byName.put(
        "copper.hottest-for-current",
        number(
            in -> {
              // A source that states its own temperature coefficient: k = 1/α - T0.
              double k = 1 / in.number("coefficient") - in.number("from");
              CopperLaw own =
                  new CopperLaw(
                      new Cited<>(
                          k, new Source("own", "the example itself"), "", Standing.PUBLISHED));
              return own.temperatureFor(
                  in.number("amps") / in.number("least-amps"), in.number("from"));
            }));
    byName.put(
        "coil-heat.winding",
        number(in -> heat(in).windingCelsius(in.number("volts"), in.number("air"))));
    byName.put(
        "coil-heat.watts", number(in -> heat(in).watts(in.number("volts"), in.number("air"))));
    byName.put(
        "coil-heat.hot-pick-up",
        number(
            in -> heat(in).hotPickUp(in.number("pick-up"), in.number("volts"), in.number("air"))));
    byName.put(
        "coil.ohms-from-power", number(in -> Math.pow(in.number("volts"), 2) / in.number("watts")));
    byName.put(
        "coil.from-current",
        numbers(
            in -> {
              double volts = in.number("volts");
              double amps = in.number("amps");
              return List.of(volts * amps, volts / amps);
            }));
  }

  private CoilHeat heat(Inputs in) {
    return new CoilHeat(copper, in.number("ohms"), in.number("from"), in.number("kelvin-per-watt"));
  }

  private void armature() {
    byName.put(
        "armature.position",
        word(
            in ->
                new ArmatureBand(
                        in.number("operate"),
                        in.number("holds"),
                        in.number("release"),
                        in.number("highest"))
                    .at(in.number("share"), in.word("before").equals("closed"))
                    .name()
                    .toLowerCase(Locale.ROOT)));
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
    byName.put("decay.zener-peak", number(in -> in.number("zener") + in.number("diode")));
  }

  private static CoilDecay coil(Inputs in) {
    return new CoilDecay(in.number("henry"), in.number("ohms"), in.number("amps"));
  }

  private void alternating() {
    byName.put(
        "ac-coil.impedance",
        numbers(
            in -> {
              AcCoil coil =
                  AcCoil.fromInductance(in.number("ohms"), in.number("henry"), in.number("hertz"));
              return List.of(coil.reactance(), coil.impedance());
            }));
    byName.put(
        "ac-coil.amps",
        numbers(
            in -> {
              AcCoil coil =
                  AcCoil.fromInductance(in.number("ohms"), in.number("henry"), in.number("hertz"));
              double volts = in.number("volts");
              return List.of(coil.amps(volts), coil.directAmps(volts));
            }));
    byName.put(
        "snubber.milliamps",
        number(in -> snubber(in).amps(in.number("volts"), in.number("hertz")) / MILLI));
    byName.put(
        "snubber.coil-volts",
        number(
            in ->
                snubber(in)
                    .coilVolts(
                        AcCoil.fromPowerFactor(
                            in.number("volts"), in.number("hold"), in.number("power-factor")),
                        in.number("volts"),
                        in.number("hertz"))));
    byName.put(
        "leakage.direct-coil-volts",
        number(
            in ->
                SnubberLeakage.directCoilVolts(in.number("milliamps") * MILLI, in.number("ohms"))));
  }

  private static SnubberLeakage snubber(Inputs in) {
    return new SnubberLeakage(in.number("ohms"), in.number("microfarad") * MICRO);
  }

  private void lines() {
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
    byName.put(
        "line-length.total-metres",
        number(
            in ->
                ControlLineLength.totalMetres(
                    in.number("drop"),
                    in.number("volts"),
                    in.number("mm2"),
                    in.number("pick-up"))));
    byName.put(
        "line-length.size",
        number(
            in ->
                in.numbers("sizes").stream()
                    .filter(
                        mm2 ->
                            ControlLineLength.oneWayMetres(
                                    in.number("volts"),
                                    in.number("pick-up"),
                                    mm2,
                                    in.number("factor"))
                                >= in.number("metres"))
                    .findFirst()
                    .orElseThrow()));
    byName.put(
        "supply.divided",
        number(
            in ->
                SupplyDemand.dividedVolts(
                    in.number("volts"), in.number("coil"), in.number("series"))));
    byName.put(
        "supply.short-time-va",
        number(
            in ->
                SupplyDemand.shortTimeVoltAmperes(
                    in.number("pulling-in"), in.number("held"), in.number("others"))));
    byName.put(
        "supply.most-coils",
        number(in -> SupplyDemand.mostCoils(in.number("limit"), in.number("coil-amps"))));
    byName.put(
        "supply.left-for-line",
        number(in -> SupplyDemand.leftForLine(in.number("lowest"), in.number("needs"))));
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

  private void contacts() {
    byName.put(
        "contact.amps",
        number(
            in ->
                new ContactCapacity(
                        in.number("most-amps"), in.number("most-volts"), in.number("volt-amperes"))
                    .ampsAt(in.number("volts"))
                    .orElseThrow()));
  }
}
