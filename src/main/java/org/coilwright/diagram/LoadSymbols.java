package org.coilwright.diagram;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.diagram.Unit.Port;
import org.coilwright.drawing.Shape.Anchor;

/** Symbols of what takes the power: all ends above, the enclosure with its earth around them. */
final class LoadSymbols {
  private static final double UPPER = 14;
  private static final double LOWER = 56;

  private LoadSymbols() {}

  static void draw(Pen pen, Unit unit, double[] x, double top) {
    List<Double> live = new ArrayList<>();
    boolean heater = unit.look() == Look.HEATER;
    for (Port port : unit.ports()) {
      double at = x[port.slot()];
      if (port.terminal().pin().equals("PE")) {
        pen.line(at, top, at, top + UPPER);
        pen.line(at - 5, top + UPPER + 3, at + 5, top + UPPER + 3);
        pen.line(at, top + UPPER, at, top + UPPER + 3);
        pen.line(at - 3, top + UPPER + 6, at + 3, top + UPPER + 6);
      } else {
        live.add(at);
        pen.line(at, top, at, top + UPPER + (heater ? 6 : 0));
      }
    }
    double left = x[0] - 9;
    double right = x[x.length - 1] + 9;
    if (heater) {
      pen.dashedBox(left, top + UPPER, right - left, LOWER - UPPER);
      heater(pen, unit, live, top + UPPER + 6);
    } else {
      pen.box(left, top + UPPER, right - left, LOWER - UPPER);
      other(pen, unit, (left + right) / 2, top, live.size());
    }
  }

  private static void heater(Pen pen, Unit unit, List<Double> x, double y) {
    boolean star = unit.isStar() && x.size() > 2;
    if (star) {
      int phases = Math.min(3, x.size());
      for (double at : x.subList(0, phases)) {
        element(pen, at - 4, y, 8, 22, true);
        pen.line(at, y + 22, at, y + 30);
      }
      double last = x.get(x.size() - 1);
      pen.line(x.get(0), y + 30, last, y + 30);
      pen.dot(x.get(1), y + 30);
      if (x.size() > phases) {
        pen.line(last, y, last, y + 30);
      }
      return;
    }
    if (x.size() == 2) {
      between(pen, x.get(0), x.get(1), y + 14, y);
      return;
    }
    for (int i = 0; i + 1 < x.size(); i++) {
      between(pen, x.get(i), x.get(i + 1), y + 8, y);
    }
    if (x.size() > 2) {
      double first = x.get(0);
      double last = x.get(x.size() - 1);
      pen.line(first, y + 8, first, y + 26);
      pen.line(last, y + 8, last, y + 26);
      across(pen, first, last, y + 26);
    }
  }

  private static void between(Pen pen, double a, double b, double y, double from) {
    pen.line(a, from, a, y);
    pen.line(b, from, b, y);
    across(pen, a, b, y);
  }

  private static void across(Pen pen, double a, double b, double y) {
    double wide = Math.min(24, b - a - 8);
    double left = (a + b - wide) / 2;
    pen.line(a, y, left, y);
    pen.line(left + wide, y, b, y);
    element(pen, left, y - 4, wide, 8, false);
  }

  /** A heating element: a box parted in four. */
  private static void element(
      Pen pen, double x, double y, double wide, double high, boolean upright) {
    pen.box(x, y, wide, high);
    for (int i = 1; i < 4; i++) {
      if (upright) {
        pen.line(x, y + high * i / 4, x + wide, y + high * i / 4);
      } else {
        pen.line(x + wide * i / 4, y, x + wide * i / 4, y + high);
      }
    }
  }

  /** A box in which the kind of load stands; each end of its own goes in. */
  private static void other(Pen pen, Unit unit, double middle, double top, int live) {
    double centre = top + (UPPER + LOWER) / 2;
    switch (unit.look()) {
      case MOTOR -> {
        pen.circle(middle, centre, 15);
        pen.text(middle, centre - 1, "M", Anchor.MIDDLE);
        pen.text(middle, centre + 9.5, live > 2 ? "3~" : "1~", Anchor.MIDDLE);
      }
      case TRANSFORMER -> {
        pen.circle(middle, centre - 5, 8);
        pen.circle(middle, centre + 5, 8);
      }
      case LIGHTING -> {
        double d = 13 * Math.sqrt(0.5);
        pen.circle(middle, centre, 13);
        pen.line(middle - d, centre - d, middle + d, centre + d);
        pen.line(middle - d, centre + d, middle + d, centre - d);
      }
      case CHARGER -> pen.text(middle, centre + 3.6, "~ / =", Anchor.MIDDLE);
      default -> {}
    }
  }
}
