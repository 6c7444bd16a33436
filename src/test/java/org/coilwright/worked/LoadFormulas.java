package org.coilwright.worked;

import static org.coilwright.worked.Formula.number;
import static org.coilwright.worked.Formula.numbers;
import static org.coilwright.worked.Formula.word;

import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.solve.CopperLaw;
import org.coilwright.solve.ElementPower;
import org.coilwright.solve.LineResistance;
import org.coilwright.solve.ThreePhase;
import org.coilwright.table.Cited;
import org.coilwright.table.ConductorTable;
import org.coilwright.table.Tables;

/** Formulas about conductors and heating elements, and looking things up in tables. */
final class LoadFormulas {
  private final Map<String, Formula> byName = new TreeMap<>();
  private final Tables tables;
  private final ConductorTable conductors;
  private final CopperLaw copper;

  private LoadFormulas(Tables tables) {
    this.tables = tables;
    conductors = new ConductorTable(tables);
    copper = CopperLaw.from(tables);
    conductors();
    elements();
    threePhase();
    tables();
  }

  static Map<String, Formula> all(Tables tables) {
    return new LoadFormulas(tables).byName;
  }

  private void conductors() {
    byName.put(
        "conductor.ohm-per-km",
        number(
            in ->
                conductors
                    .ohmPerKm(
                        new ConductorSize(in.number("mm2"), OptionalInt.empty()),
                        in.word("class").equals("5"))
                    .orElseThrow()
                    .value()));
    byName.put(
        "conductor.ohm-per-km-hot",
        number(
            in ->
                new LineResistance(
                        copper,
                        conductors
                            .ohmPerKm(
                                new ConductorSize(in.number("mm2"), OptionalInt.empty()),
                                in.word("class").equals("5"))
                            .orElseThrow())
                    .ohms(1000, in.number("at"))));
    byName.put(
        "conductor.factor-to-20",
        numbers(in -> in.numbers("at").stream().map(LineResistance::tabulatedFactorTo20).toList()));
    byName.put(
        "conductor.loop-drop",
        number(
            in ->
                new LineResistance(
                        copper,
                        conductors
                            .ohmPerKm(
                                new ConductorSize(in.number("mm2"), OptionalInt.empty()),
                                in.word("class").equals("5"))
                            .orElseThrow())
                    .loopDrop(in.number("metres"), in.number("at"), in.number("amps"))));
    byName.put(
        "conductor.handbook-drop",
        number(
            in ->
                LineResistance.handbookDrop(
                    in.number("mv-per-am"), in.number("amps"), in.number("metres"))));
    byName.put(
        "awg.geometry",
        numbers(
            in -> {
              double mm2 = ConductorSize.ofAwg(in.count("gauge")).mm2();
              return List.of(Math.sqrt(mm2 * 4 / Math.PI), mm2);
            }));
    byName.put(
        "awg.step",
        number(
            in ->
                Math.sqrt(
                    ConductorSize.ofAwg(in.count("gauge") - 1).mm2()
                        / ConductorSize.ofAwg(in.count("gauge")).mm2())));
  }

  private void elements() {
    byName.put("element.amps", number(in -> element(in).amps()));
    byName.put("element.three-phase-amps", number(in -> element(in).threePhaseAmps()));
    byName.put("element.together-amps", number(in -> element(in).amps() + in.number("other-amps")));
    byName.put("element.watts-at", number(in -> element(in).wattsAt(in.number("at-volts"))));
    byName.put(
        "element.worst-amps",
        number(
            in ->
                element(in)
                    .atHighest(
                        tables.figure("poles.heater-power-high").value(),
                        tables.figure("poles.heater-power-least-margin").value())
                    .ampsAt(in.number("volts") * (1 + in.number("supply-tolerance")))));
  }

  private static ElementPower element(Inputs in) {
    return new ElementPower(in.number("watts"), in.number("volts"));
  }

  private void threePhase() {
    byName.put(
        "delta.lines",
        numbers(
            in -> {
              List<Double> g = conductances(in);
              return list(ThreePhase.delta(in.number("volts"), g.get(0), g.get(1), g.get(2)));
            }));
    byName.put(
        "delta.lines-without-first",
        numbers(
            in -> {
              List<Double> g = conductances(in);
              return list(
                  ThreePhase.deltaWithoutFirstLine(
                      in.number("volts"), g.get(0), g.get(1), g.get(2)));
            }));
    byName.put(
        "star.lines",
        numbers(
            in -> {
              List<Double> g = conductances(in);
              return list(ThreePhase.star(in.number("volts"), g.get(0), g.get(1), g.get(2)));
            }));
    byName.put(
        "star-with-neutral.lines",
        numbers(
            in -> {
              List<Double> g = conductances(in);
              ThreePhase.Lines lines =
                  ThreePhase.starWithNeutral(in.number("volts"), g.get(0), g.get(1), g.get(2));
              return List.of(lines.first(), lines.second(), lines.third(), lines.neutral());
            }));
    byName.put(
        "neutral.amps",
        number(in -> ThreePhase.neutral(in.number("a"), in.number("b"), in.number("c"))));
    byName.put(
        "star.element-volts",
        numbers(
            in -> {
              List<Double> g = conductances(in);
              return list(
                  ThreePhase.starElementVolts(in.number("volts"), g.get(0), g.get(1), g.get(2)));
            }));
    byName.put(
        "three-phase.power-share",
        number(
            in -> {
              double volts = in.number("volts");
              List<Double> g = conductances(in);
              List<Double> whole =
                  in.numbers("whole-ohms").stream().map(LoadFormulas::siemens).toList();
              String joined = in.word("joined");
              return power(joined, volts, g) / power(joined, volts, whole);
            }));
    byName.put(
        "three-phase.threshold", number(in -> (in.number("whole") + in.number("broken")) / 2));
  }

  private static double power(String joined, double volts, List<Double> g) {
    double phase = volts / Math.sqrt(3);
    return switch (joined) {
      case "delta" -> volts * volts * (g.get(0) + g.get(1) + g.get(2));
      case "star-with-neutral" -> phase * phase * (g.get(0) + g.get(1) + g.get(2));
      case "star" -> {
        ThreePhase.Lines across = ThreePhase.starElementVolts(volts, g.get(0), g.get(1), g.get(2));
        yield g.get(0) * Math.pow(across.first(), 2)
            + g.get(1) * Math.pow(across.second(), 2)
            + g.get(2) * Math.pow(across.third(), 2);
      }
      default -> throw new IllegalArgumentException(joined);
    };
  }

  /** Elements in ohms; 0 is a short, a negative figure an element that is open. */
  private static List<Double> conductances(Inputs in) {
    return in.numbers("ohms").stream().map(LoadFormulas::siemens).toList();
  }

  private static double siemens(double ohms) {
    return ohms < 0 ? 0 : 1 / ohms;
  }

  private static List<Double> list(ThreePhase.Lines lines) {
    return List.of(lines.first(), lines.second(), lines.third());
  }

  private void tables() {
    byName.put(
        "table.cell",
        number(
            in ->
                tables
                    .lookup(
                        in.word("table"),
                        in.has("row") ? row(in) : Map.of(),
                        in.number("at"),
                        in.word("column"))
                    .orElseThrow()
                    .value()));
    byName.put(
        "table.row-cell",
        number(
            in ->
                tables.lookup(in.word("table"), row(in), in.word("column")).orElseThrow().value()));
    byName.put("figure", number(in -> tables.figure(in.word("id")).value()));
    byName.put(
        "table.standing",
        word(
            in ->
                tables
                    .lookup(in.word("table"), Map.of(), in.number("at"), in.word("column"))
                    .map(Cited::standing)
                    .orElseThrow()
                    .word()));
  }

  private static Map<String, String> row(Inputs in) {
    Map<String, String> where = new TreeMap<>();
    for (String pair : in.word("row").split(", *", -1)) {
      String[] parts = pair.split("=", 2);
      where.put(parts[0], parts[1]);
    }
    return where;
  }
}
