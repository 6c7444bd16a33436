package org.coilwright.diagram;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.diagram.Unit.Port;
import org.coilwright.drawing.Letters;

/** How much room a unit and what stands beside it take. */
final class Extent {
  /** Half of what a symbol takes on either side of its line. */
  static final double BODY = 12;

  static final double GAP = 3;
  private static final double SYMBOL = 42;
  private static final double LOAD = 60;
  private static final double REFERENCE = 34;

  /** A list begins so far left of its line. */
  static final double LIST_LEFT = 6;

  private static final double MAINS = 36;
  private static final int MARKERS_IN_A_ROW = 3;

  private final Letters letters;
  private final Notes notes;

  Extent(Letters letters, Notes notes) {
    this.letters = letters;
    this.notes = notes;
  }

  double text(String text) {
    return letters.width(text, Type.SIZE);
  }

  /** Text in lines of a width, broken between words. */
  List<String> wrapped(String text, double width) {
    List<String> lines = new ArrayList<>();
    String line = "";
    for (String word : text.split(" ", -1)) {
      String longer = line.isEmpty() ? word : line + " " + word;
      if (!line.isEmpty() && text(longer) > width) {
        lines.add(line);
        line = word;
      } else {
        line = longer;
      }
    }
    lines.add(line);
    return lines;
  }

  /** What stands left of a unit, its designation first. */
  List<String> lines(Unit unit) {
    return notes.lines(unit);
  }

  /** How high a unit is with what stands beside it. */
  double height(Unit unit) {
    double symbol =
        switch (unit.look()) {
          case HEATER, MOTOR, TRANSFORMER, CHARGER, LIGHTING, LOAD -> LOAD;
          case FROM, TO -> REFERENCE;
          case LIST_ABOVE, LIST_BELOW -> 12 + unit.words().size() * Type.LEADING;
          case MAINS -> MAINS;
          default -> SYMBOL;
        };
    if (unit.look().isReference()) {
      return symbol;
    }
    int rows = lines(unit).size() + markerRows(notes.markers(unit).size());
    return Math.max(symbol, rows * Type.LEADING + 6);
  }

  static int markerRows(int markers) {
    return (markers + MARKERS_IN_A_ROW - 1) / MARKERS_IN_A_ROW;
  }

  /** Markers of a row. */
  static List<List<Integer>> rows(List<Integer> markers) {
    List<List<Integer>> rows = new ArrayList<>();
    for (int i = 0; i < markers.size(); i += MARKERS_IN_A_ROW) {
      rows.add(markers.subList(i, Math.min(markers.size(), i + MARKERS_IN_A_ROW)));
    }
    return rows;
  }

  double marker(int number) {
    return text(Integer.toString(number)) + 6;
  }

  /** Width of a row of markers. */
  double markers(List<Integer> row) {
    return row.stream().mapToDouble(n -> marker(n) + 2).sum();
  }

  /** Left of the first line. */
  double left(Unit unit) {
    if (unit.look().isReference()) {
      return unit.look().isList() ? LIST_LEFT : reference(unit);
    }
    double widest = letters.width(unit.part(), Type.NAME);
    for (String line : lines(unit).subList(1, lines(unit).size())) {
      widest = Math.max(widest, text(line));
    }
    for (List<Integer> row : rows(notes.markers(unit))) {
      widest = Math.max(widest, markers(row));
    }
    return body(unit) + GAP + widest;
  }

  /** Left of the line what the symbol alone takes. */
  static double body(Unit unit) {
    return switch (unit.look()) {
      case THERMOSTAT, CUT_OUT, SWITCH_MAKE, SWITCH_BREAK -> 28;
      case HEATER, MOTOR, TRANSFORMER, CHARGER, LIGHTING, LOAD -> 10;
      default -> BODY;
    };
  }

  /** Right of the line at one of a unit's columns. */
  double right(Unit unit, int slot) {
    if (unit.look().isReference()) {
      return unit.look().isList() ? list(unit) - LIST_LEFT : reference(unit);
    }
    double right = unit.look() == Look.COIL || unit.look() == Look.INPUT ? 14 : 10;
    for (Port port : unit.ports()) {
      if (port.slot() == slot) {
        right = Math.max(right, GAP + text(port.terminal().pin()));
      }
    }
    if (unit.look() == Look.RESERVED) {
      right = Math.max(right, GAP + text(unit.words().get(slot)) + 4);
    }
    return right;
  }

  /** Between two columns of a unit, at least. */
  double pitch(Unit unit, int slot) {
    double next = unit.look() == Look.RESERVED ? 4 : BODY;
    double least = unit.look().isLoad() ? 34 : 26;
    return Math.max(least, right(unit, slot) + next);
  }

  private double list(Unit unit) {
    double widest = 0;
    for (String line : unit.words()) {
      widest = Math.max(widest, text(Notes.listed(line, Notes.WIDEST_PLACE)));
    }
    return widest + 2;
  }

  private double reference(Unit unit) {
    double name = text(unit.ports().get(0).terminal().toString());
    return Math.max(name, text(Notes.WIDEST_PLACE)) / 2 + 1;
  }
}
