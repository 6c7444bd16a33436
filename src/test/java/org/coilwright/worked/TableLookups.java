package org.coilwright.worked;

import static org.coilwright.worked.Formula.number;
import static org.coilwright.worked.Formula.numbers;
import static org.coilwright.worked.Formula.word;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.solve.CopperLaw;
import org.coilwright.table.Cited;
import org.coilwright.table.ConductorTable;
import org.coilwright.table.Tables;

/** Conductors, gauges, and single cells of tables. */
final class TableLookups {
  private final Map<String, Formula> byName = new TreeMap<>();
  private final Tables tables;
  private final ConductorTable conductors;

  private TableLookups(Tables tables) {
    this.tables = tables;
    conductors = new ConductorTable(tables);
    conductors();
    cells();
  }

  static Map<String, Formula> all(Tables tables) {
    return new TableLookups(tables).byName;
  }

  private void conductors() {
    byName.put("conductor.ohm-per-km", number(in -> ohmPerKm(in).value()));
    byName.put(
        "conductor.ohm-per-km-hot",
        number(in -> CopperLaw.from(tables).at(ohmPerKm(in), 20, in.number("at")).value()));
    byName.put(
        "awg.geometry",
        numbers(
            in -> {
              double mm2 = ConductorSize.ofAwg(in.count("gauge")).mm2();
              return List.of(Math.sqrt(mm2 * 4 / Math.PI), mm2);
            }));
    byName.put(
        "awg.diameters",
        numbers(
            in ->
                in.numbers("gauges").stream()
                    .map(g -> Math.sqrt(ConductorSize.ofAwg(g.intValue()).mm2() * 4 / Math.PI))
                    .toList()));
    byName.put(
        "awg.ohms",
        numbers(
            in ->
                in.numbers("gauges").stream()
                    .map(
                        g ->
                            tables
                                    .lookup(
                                        "conductor-resistance-awg",
                                        Map.of("awg", Integer.toString(g.intValue())),
                                        "ideal-20")
                                    .orElseThrow()
                                    .value()
                                * in.number("metres")
                                / 1000)
                    .toList()));
    byName.put(
        "awg.step",
        number(
            in ->
                Math.sqrt(
                    ConductorSize.ofAwg(in.count("gauge") - 1).mm2()
                        / ConductorSize.ofAwg(in.count("gauge")).mm2())));
  }

  private Cited<Double> ohmPerKm(Inputs in) {
    return conductors
        .ohmPerKm(ConductorSize.ofMm2(in.number("mm2")), in.word("class").equals("5"))
        .orElseThrow();
  }

  private void cells() {
    byName.put("figure", number(in -> tables.figure(in.word("id")).value()));
    byName.put("table.cell", number(in -> cell(in, in.number("at")).value()));
    byName.put(
        "table.column",
        numbers(in -> in.numbers("at").stream().map(at -> cell(in, at).value()).toList()));
    byName.put(
        "table.row-cell",
        number(
            in ->
                tables.lookup(in.word("table"), row(in), in.word("column")).orElseThrow().value()));
    byName.put("table.standing", word(in -> cell(in, in.number("at")).standing().word()));
  }

  private Cited<Double> cell(Inputs in, double at) {
    return tables
        .lookup(in.word("table"), in.has("row") ? row(in) : Map.of(), at, in.word("column"))
        .orElseThrow();
  }

  /** The row's words, written as {@code awg=12}. */
  private static Map<String, String> row(Inputs in) {
    Map<String, String> where = new TreeMap<>();
    for (String pair : in.word("row").split(", *", -1)) {
      String[] parts = pair.split("=", 2);
      where.put(parts[0], parts[1]);
    }
    return where;
  }
}
