// Over 250 lines: one formula after the other.
package org.coilwright.worked;

import static org.coilwright.worked.Formula.number;
import static org.coilwright.worked.Formula.numbers;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.coilwright.netlist.Method;
import org.coilwright.netlist.Mounting;
import org.coilwright.netlist.Site;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.quantity.Worded;
import org.coilwright.sizing.Ampacity;
import org.coilwright.sizing.BoxHeat;
import org.coilwright.sizing.Choice;
import org.coilwright.sizing.Chooser;
import org.coilwright.sizing.ContactConditions;
import org.coilwright.sizing.Core;
import org.coilwright.sizing.Derated;
import org.coilwright.sizing.Duty;
import org.coilwright.sizing.Endurance;
import org.coilwright.sizing.Factor;
import org.coilwright.sizing.LoadCurrent;
import org.coilwright.sizing.Question;
import org.coilwright.sizing.Series;
import org.coilwright.sizing.ShortCircuit;
import org.coilwright.sizing.WireOhms;
import org.coilwright.table.Tables;

/** The power side: load currents, derating, life, wires, devices. */
final class SizingFormulas {
  private final Map<String, Formula> byName = new TreeMap<>();
  private final Tables tables;

  private SizingFormulas(Tables tables) {
    this.tables = tables;
    contacts();
    life();
    wires();
    losses();
    devices();
  }

  static Map<String, Formula> all(Tables tables) {
    return new SizingFormulas(tables).byName;
  }

  private void contacts() {
    byName.put(
        "sizing.upper-watts",
        number(
            in -> {
              double watts = in.number("watts");
              return watts * LoadCurrent.tolerance(watts, tables).orElseThrow().value();
            }));
    byName.put(
        "sizing.contact-amps",
        number(
            in -> {
              ContactConditions where =
                  new ContactConditions(
                      in.number("air"),
                      OptionalDouble.empty(),
                      false,
                      in.has("metres")
                          ? OptionalDouble.of(in.number("metres"))
                          : OptionalDouble.empty(),
                      50,
                      in.has("poles") ? in.count("poles") : 1);
              List<Factor> factors = where.factors(tables).known().orElseThrow();
              return new Derated(in.number("rated"), factors, List.of()).amps();
            }));
    byName.put(
        "sizing.thin-air-volts",
        number(
            in ->
                in.number("rated")
                    * tables
                        .lookup("contact-altitude", Map.of(), in.number("metres"), "voltage")
                        .orElseThrow()
                        .value()));
    byName.put(
        "sizing.box-area",
        number(
            in ->
                BoxHeat.area(
                    Worded.find(Site.BoxMounting.class, in.word("mounting")).orElseThrow(),
                    in.number("width"),
                    in.number("height"),
                    in.number("depth"),
                    tables)));
  }

  private void life() {
    byName.put(
        "sizing.life-years",
        number(
            in ->
                Endurance.of(
                        in.number("cycles"),
                        in.number("at"),
                        in.number("amps"),
                        Optional.empty(),
                        tables)
                    .years(in.number("per-year") / tables.figure("sizing.days-per-year").value())));
    byName.put(
        "sizing.life-cycles",
        number(
            in ->
                Endurance.of(
                        in.number("cycles"),
                        in.number("at"),
                        in.number("amps"),
                        Optional.empty(),
                        tables)
                    .cycles()));
    byName.put(
        "sizing.mean-years",
        number(in -> Endurance.meanYears(in.number("b10d"), in.number("per-year"))));
    byName.put(
        "sizing.weibull-eta",
        number(in -> Endurance.weibullEta(in.number("b10"), in.number("shape"))));
  }

  private void wires() {
    byName.put(
        "sizing.wire-amps",
        numbers(
            in -> in.numbers("air").stream().map(air -> amps(size(in), laid(in, air))).toList()));
    byName.put(
        "sizing.least-wire",
        number(
            in -> {
              for (double mm2 : List.of(1.5, 2.5, 4.0, 6.0, 10.0, 16.0, 25.0, 35.0)) {
                if (amps(ConductorSize.ofMm2(mm2), laid(in, in.number("at")))
                    >= in.number("amps")) {
                  return mm2;
                }
              }
              throw new IllegalStateException("no size");
            }));
    byName.put(
        "sizing.short-circuit-size",
        number(
            in ->
                ShortCircuit.leastSize(
                    in.number("amps"),
                    in.number("seconds"),
                    core(in)
                        .shortCircuitFactor(ConductorSize.ofMm2(1), tables)
                        .orElseThrow()
                        .value())));
    byName.put(
        "sizing.needed-ampacity",
        number(
            in ->
                in.number("rating")
                    * tables
                        .lookup("overload-device", Map.of("device", in.word("device")), "i2")
                        .orElseThrow()
                        .value()
                    / tables.figure("sizing.overload-share").value()));
    byName.put(
        "sizing.drop-limits",
        numbers(
            in ->
                List.of(
                    in.number("volts") * drop("lighting"), in.number("volts") * drop("other"))));
  }

  private void losses() {
    byName.put("sizing.drop", number(in -> dropPerMetre(in) * in.number("metres")));
    byName.put("sizing.farthest", number(in -> in.number("lost") / dropPerMetre(in)));
    byName.put(
        "sizing.earth-loop",
        number(
            in -> {
              double celsius = core(in).celsius(size(in), tables).value();
              double back = ohms(ConductorSize.ofMm2(in.number("protective")), celsius);
              return in.number("outside") + (ohms(size(in), celsius) + back) * in.number("metres");
            }));
    byName.put(
        "sizing.residual-ohms",
        numbers(
            in ->
                in.numbers("trip").stream()
                    .map(trip -> tables.figure("sizing.touch-voltage").value() / trip)
                    .toList()));
    byName.put(
        "sizing.stands",
        number(
            in ->
                ShortCircuit.stands(
                    core(in).shortCircuitFactor(size(in), tables).orElseThrow().value(),
                    in.number("mm2"))));
  }

  private double dropPerMetre(Inputs in) {
    double celsius = core(in).celsius(size(in), tables).value();
    return in.number("amps") * ohms(size(in), celsius) * WireOhms.wires(in.count("loaded"));
  }

  private double ohms(ConductorSize size, double celsius) {
    return WireOhms.perMetre(size, celsius, tables).orElseThrow().value();
  }

  private double drop(String use) {
    return tables
        .lookup("voltage-drop-limits", Map.of("supply", "public"), use)
        .orElseThrow()
        .value();
  }

  private double amps(ConductorSize size, Ampacity.Laid laid) {
    return new Ampacity(tables).of(size, laid).known().orElseThrow().amps();
  }

  private static ConductorSize size(Inputs in) {
    return in.has("awg")
        ? ConductorSize.ofAwg(in.count("awg"))
        : ConductorSize.ofMm2(in.number("mm2"));
  }

  private static Ampacity.Laid laid(Inputs in, double air) {
    return new Ampacity.Laid(
        Worded.find(Method.class, in.word("method")).orElseThrow(),
        in.count("loaded"),
        air,
        in.has("circuits") ? in.count("circuits") : 1,
        core(in));
  }

  private static Core core(Inputs in) {
    return new Core(
        true,
        in.has("insulation") ? Optional.of(in.word("insulation")) : Optional.empty(),
        in.has("clamps") ? OptionalDouble.of(in.number("clamps")) : OptionalDouble.empty());
  }

  private void devices() {
    byName.put(
        "sizing.breaker-bands",
        numbers(
            in -> {
              double rating = in.number("rating");
              return List.of(
                  rating * cell("magnetic-trip", "curve", in.word("curve"), "holds"),
                  rating * cell("magnetic-trip", "curve", in.word("curve"), "trips"),
                  rating * cell("overload-device", "device", "breaker-60898", "i1"),
                  rating * cell("overload-device", "device", "breaker-60898", "i2"));
            }));
    byName.put(
        "sizing.largest-loops",
        numbers(
            in ->
                in.numbers("ratings").stream()
                    .map(
                        r ->
                            in.number("volts")
                                / (r * cell("magnetic-trip", "curve", in.word("curve"), "trips")))
                    .toList()));
    byName.put(
        "sizing.nec-appliance",
        numbers(
            in -> {
              double amps = in.number("watts") / in.number("volts") + in.number("beside");
              double continuous = amps * tables.figure("sizing.continuous-load").value();
              return List.of(
                  amps, continuous, Series.atLeast(continuous, tables).orElseThrow().value());
            }));
    byName.put(
        "sizing.nec-largest-device",
        number(
            in ->
                Series.atLeast(
                        in.number("watts")
                            / in.number("volts")
                            * tables.figure("sizing.appliance-device").value(),
                        tables)
                    .orElseThrow()
                    .value()));
    byName.put(
        "sizing.nec-circuits",
        numbers(
            in -> {
              List<Double> all = new ArrayList<>();
              List<Double> volts = in.numbers("volts");
              for (int i = 0; i < volts.size(); i++) {
                double amps = in.numbers("watts").get(i) / volts.get(i);
                Choice choice =
                    Chooser.answer(question("metal-sheathed", amps, amps, 30, true), tables);
                all.add(amps);
                all.add(choice.value("breaker").orElseThrow());
                all.add((double) gauge(choice.value("wire").orElseThrow()));
              }
              return all;
            }));
    byName.put(
        "sizing.contactor",
        number(in -> Chooser.answer(question(in), tables).value("choose").orElseThrow()));
    byName.put("sizing.needs", number(in -> choice(in).value("needs").orElseThrow()));
  }

  /** The gauge of a copper area. */
  private static int gauge(double mm2) {
    return IntStream.rangeClosed(1, 18)
        .filter(g -> Math.abs(ConductorSize.ofAwg(g).mm2() - mm2) < 1e-9)
        .findFirst()
        .orElseThrow();
  }

  private Choice choice(Inputs in) {
    return Chooser.answer(question(in), tables);
  }

  private static Question question(Inputs in) {
    return question(
        in.word("kind"), in.number("amps"), in.number("worst"), in.number("air"), false);
  }

  private static Question question(
      String kind, double amps, double worst, double air, boolean nec) {
    return new Question(
        "worked example",
        new Question.Load(amps, worst, "at worst", 230, 2, 2, kind, false),
        new Question.Place(air, OptionalDouble.empty(), Mounting.SPACED, OptionalDouble.empty()),
        new Question.Laid(Method.B2, 30, OptionalDouble.empty(), Core.ASSUMED),
        new Question.Supply(
            nec ? Site.Practice.NEC : Site.Practice.IEC,
            false,
            OptionalDouble.empty(),
            OptionalDouble.empty()),
        new Question.Service(OptionalDouble.empty(), 10, Duty.EIGHT_HOUR, Optional.empty()),
        new Question.Drive(List.of(), Optional.empty()),
        List.of());
  }

  private double cell(String table, String key, String word, String column) {
    return tables.lookup(table, Map.of(key, word), column).orElseThrow().value();
  }
}
