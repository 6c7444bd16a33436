// Over 250 lines: the symbols of one standard stand together.
package org.coilwright.diagram;

import java.util.List;
import org.coilwright.drawing.Shape;
import org.coilwright.drawing.Shape.Anchor;

/** Graphical symbols after IEC 60617, upright; what is turned over is drawn mirrored. */
final class Symbols {
  /** Where a contact's fixed part ends and where its blade is hinged, from the top. */
  private static final double FIXED = 15;

  private static final double HINGE = 32;
  private static final double LINK = 24;

  private final Pen pen = new Pen();
  private final Unit unit;
  private final double[] x;
  private final double top;
  private final double height;

  private Symbols(Unit unit, double[] x, double top, double height) {
    this.unit = unit;
    this.x = x;
    this.top = top;
    this.height = height;
  }

  /**
   * The strokes of a unit.
   *
   * @param x of its columns
   * @param height down to which its lower ends reach
   */
  static List<Shape> of(Unit unit, double[] x, double top, double height) {
    Symbols symbols = new Symbols(unit, x, top, height);
    symbols.draw();
    return symbols.pen.shapes();
  }

  private void draw() {
    switch (unit.look()) {
      case MAINS -> mains();
      case RESERVED -> reserved();
      case CHANGEOVER -> changeover();
      case CLAMPS -> clamps();
      case FROM, LIST_ABOVE -> from();
      case TO, LIST_BELOW -> to();
      case HEATER, MOTOR, TRANSFORMER, CHARGER, LIGHTING, LOAD ->
          LoadSymbols.draw(pen, unit, x, top);
      default -> {
        for (double at : x) {
          twoEnds(at);
        }
        link();
      }
    }
  }

  /** A point of a symbol that may be upside down, from its upper edge. */
  private double y(double down) {
    return unit.isTurned() ? top + height - down : top + down;
  }

  private void lead(double at, double from, double to) {
    pen.line(at, y(from), at, y(to));
  }

  private void twoEnds(double at) {
    switch (unit.look()) {
      case FUSE -> {
        lead(at, 0, height);
        box(at - 4, 12, 8, 18);
      }
      case COIL -> {
        lead(at, 0, 16);
        box(at - 12, 16, 24, 14);
        lead(at, 30, height);
      }
      case RESISTOR -> {
        lead(at, 0, 12);
        box(at - 4, 12, 8, 18);
        lead(at, 30, height);
      }
      case VARISTOR -> {
        lead(at, 0, 12);
        box(at - 4, 12, 8, 18);
        lead(at, 30, height);
        pen.path(Type.THIN, at - 10, y(31), at - 6, y(31), at + 9, y(12));
      }
      case SNUBBER -> {
        lead(at, 0, 12);
        box(at - 4, 12, 8, 9);
        lead(at, 21, 24);
        pen.line(1.2, at - 7, y(24), at + 7, y(24));
        pen.line(1.2, at - 7, y(28), at + 7, y(28));
        lead(at, 28, height);
      }
      case DIODE -> {
        // K is its first end: the bar; the triangle points to it
        lead(at, 0, height);
        pen.line(1.2, at - 6, y(17), at + 6, y(17));
        pen.area(at - 6, y(29), at + 6, y(29), at, y(17));
      }
      case LAMP -> {
        lead(at, 0, 15);
        pen.circle(at, y(23), 8);
        double d = 8 * Math.sqrt(0.5);
        pen.line(at - d, y(23 - d), at + d, y(23 + d));
        pen.line(at - d, y(23 + d), at + d, y(23 - d));
        lead(at, 31, height);
      }
      case INPUT -> {
        lead(at, 0, 15);
        box(at - 14, 15, 28, 16);
        pen.text(at, middle(15, 31) + 3.6, "~ / =", Anchor.MIDDLE);
        if (!unit.bottoms().isEmpty() && !unit.tops().isEmpty()) {
          lead(at, 31, height);
        }
      }
      case SOURCE -> {
        lead(at, 0, 15);
        box(at - 12, 15, 24, 16);
        pen.line(at - 7, y(21), at + 7, y(21));
        pen.dashed(at - 7, y(25), at + 7, y(25));
        pen.text(at - 7, y(0) + 10, "+", Anchor.MIDDLE);
        pen.text(at - 7, y(height) - 3, "−", Anchor.MIDDLE);
        lead(at, 31, height);
      }
      default -> contact(at);
    }
  }

  private double middle(double from, double to) {
    return (y(from) + y(to)) / 2;
  }

  private void box(double left, double down, double wide, double high) {
    pen.box(left, Math.min(y(down), y(down + high)), wide, high);
  }

  private boolean opens() {
    return switch (unit.look()) {
      case BREAK, SWITCH_BREAK, THERMOSTAT, CUT_OUT, MAIN_BREAK -> true;
      default -> false;
    };
  }

  private void contact(double at) {
    lead(at, 0, FIXED);
    if (opens()) {
      pen.line(at, y(FIXED), at + 7, y(FIXED));
      pen.line(at, y(HINGE), at + 8, y(FIXED - 3));
    } else {
      pen.line(at, y(HINGE), at - 9, y(FIXED + 1));
    }
    lead(at, HINGE, height);
    switch (unit.look()) {
      case BREAKER -> {
        pen.line(at - 3, y(FIXED - 3), at + 3, y(FIXED + 3));
        pen.line(at - 3, y(FIXED + 3), at + 3, y(FIXED - 3));
      }
      case RCD -> pen.line(1.2, at - 4, y(FIXED), at + 4, y(FIXED));
      case MAIN_CONTACT, MAIN_BREAK -> pen.halfCircle(at, y(FIXED - 3), 3);
      default -> {}
    }
  }

  /** Where the blade is at the height of the linkage. */
  private double blade(double at) {
    return opens() ? at + 3.5 : at - 4;
  }

  /** What moves the contacts, and that it moves them together. */
  private void link() {
    double y = y(LINK);
    double first = blade(x[0]);
    switch (unit.look()) {
      case SWITCH_MAKE, SWITCH_BREAK -> {
        pen.dashed(x[0] - 22, y, first, y);
        pen.line(x[0] - 22, y - 4, x[0] - 22, y + 4);
        pen.path(Type.THIN, x[0] - 26, y - 4, x[0] - 22, y - 4);
      }
      case THERMOSTAT, CUT_OUT -> {
        pen.dashed(x[0] - 16, y, first, y);
        pen.box(x[0] - 28, y - 7, 12, 14);
        pen.text(x[0] - 22, y + 3.6, "θ", Anchor.MIDDLE);
      }
      default -> {}
    }
    if (x.length > 1) {
      switch (unit.look()) {
        case BREAKER,
            RCD,
            MAIN_CONTACT,
            MAIN_BREAK,
            SWITCH_MAKE,
            SWITCH_BREAK,
            THERMOSTAT,
            CUT_OUT ->
            pen.dashed(first, y, blade(x[x.length - 1]), y);
        default -> {}
      }
    }
    if (unit.look() == Look.RCD) {
      double last = x[x.length - 1];
      pen.oval((x[0] + last) / 2, y(35), (last - x[0]) / 2 + 6, 2.5);
    }
  }

  private void mains() {
    for (int slot = 0; slot < x.length; slot++) {
      double at = x[slot];
      String pin = unit.ports().get(slot).terminal().pin();
      pen.circle(at, top + 15, 3);
      pen.line(at, top + 18, at, top + height);
      if (pin.equals("PE")) {
        earth(pen, at, top + 9);
      }
    }
  }

  /** Earth above a line that comes from below. */
  static void earth(Pen pen, double at, double y) {
    pen.line(at, y, at, y + 3);
    pen.line(at - 6, y, at + 6, y);
    pen.line(at - 4, y - 3, at + 4, y - 3);
    pen.line(at - 2, y - 6, at + 2, y - 6);
  }

  private void reserved() {
    for (double at : x) {
      pen.line(at, top, at, top + 14);
      pen.circle(at, top + 17, 3);
      pen.line(at - 4, top + 21, at + 4, top + 13);
    }
  }

  private void clamps() {
    for (double at : x) {
      pen.line(at, top, at, top + 20);
      pen.circle(at, top + 23, 3);
      pen.line(at, top + 26, at, top + height);
    }
    for (int i = 1; i < x.length; i++) {
      pen.line(Type.THICK, x[i - 1] + 3, top + 23, x[i] - 3, top + 23);
    }
  }

  /** Its common end above; at rest the blade lies at the contact on the right. */
  private void changeover() {
    lead(x[0], 0, 12);
    pen.line(x[0], y(12), x[0] + 9, y(30));
    pen.path(Type.THIN, x[0] + 6, y(29), x[1], y(29), x[1], y(height));
    lead(x[0], 29, height);
  }

  private void from() {
    pen.line(x[0], top + height - 9, x[0], top + height);
    pen.area(x[0] - 3, top + height - 9, x[0] + 3, top + height - 9, x[0], top + height - 3);
  }

  private void to() {
    pen.line(x[0], top, x[0], top + 3);
    pen.area(x[0] - 3, top + 3, x[0] + 3, top + 3, x[0], top + 9);
  }
}
