package org.coilwright.sizing;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.sizing.Choice.Line;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** An answer in the making: what was found so far and what it rests on. */
class Working {
  final Tables tables;
  final List<Line> lines;
  final List<Cited<?>> cited;
  private final boolean[] fits;

  Working(Tables tables) {
    this.tables = tables;
    lines = new ArrayList<>();
    cited = new ArrayList<>();
    fits = new boolean[] {true};
  }

  /** Goes on with the same answer. */
  Working(Working begun) {
    tables = begun.tables;
    lines = begun.lines;
    cited = begun.cited;
    fits = begun.fits;
  }

  void doesNotFit() {
    fits[0] = false;
  }

  boolean fits() {
    return fits[0];
  }

  final void add(String key, String label, String text) {
    lines.add(new Line(key, label, text, OptionalDouble.empty(), ""));
  }

  final void add(String key, String label, String text, double value, String unit) {
    lines.add(new Line(key, label, text, OptionalDouble.of(value), unit));
  }

  static String amps(double amps) {
    return amps >= 1 && amps < 100
        ? String.format(Locale.ROOT, amps == Math.rint(amps) ? "%.0f A" : "%.1f A", amps)
        : Printed.amps(amps);
  }

  static String plain(double number) {
    return Printed.of(number, Dimension.COUNT);
  }
}
