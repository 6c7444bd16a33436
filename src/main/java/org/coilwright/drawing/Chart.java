package org.coilwright.drawing;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.drawing.Shape.Anchor;
import org.coilwright.drawing.Shape.Label;
import org.coilwright.drawing.Shape.Point;
import org.coilwright.drawing.Shape.Stroke;

/**
 * One frame with axes, lines in it, a legend above and marks along its upper edge.
 *
 * @param x the axis below
 * @param left the axis on the left
 * @param right the axis on the right, if some lines go by another one
 * @param marks spans along the upper edge
 */
public record Chart(
    Axis x, Axis left, Optional<Axis> right, List<Series> series, List<Mark> marks) {
  private static final double SMALL = 9;
  private static final double GAP = 4;
  private static final double LEGEND = 16;
  private static final double MARK = 7;
  private static final Stroke FRAME = Stroke.of(0.8, 0.2);
  private static final Stroke RULE = Stroke.of(0.4, 0.8);

  /**
   * An axis.
   *
   * @param label with its unit, such as {@code power, kW}
   * @param ticks in ascending order, the first and last at the ends of the axis
   */
  public record Axis(String label, List<Tick> ticks) {
    double from() {
      return ticks.get(0).at();
    }

    double to() {
      return ticks.get(ticks.size() - 1).at();
    }

    /** An axis of round numbers that holds all of the given range. */
    public static Axis round(String label, double low, double high) {
      double span = Math.max(high - low, 1e-9);
      double rough = span / 5;
      double power = Math.pow(10, Math.floor(Math.log10(rough)));
      double step = power;
      for (double times : new double[] {1, 2, 5, 10}) {
        if (times * power >= rough * 0.999) {
          step = times * power;
          break;
        }
      }
      List<Tick> ticks = new ArrayList<>();
      long first = (long) Math.floor(low / step + 1e-9);
      long last = Math.max(first + 1, (long) Math.ceil(high / step - 1e-9));
      for (long i = first; i <= last; i++) {
        BigDecimal value =
            BigDecimal.valueOf(i * step).round(new java.math.MathContext(6)).stripTrailingZeros();
        ticks.add(
            new Tick(
                i * step, value.signum() == 0 ? "0" : value.toPlainString().replace('-', '−')));
      }
      return new Axis(label, ticks);
    }
  }

  /** A place on an axis and what stands there. */
  public record Tick(double at, String text) {}

  /**
   * A line or a filled area.
   *
   * @param byRight true if it goes by the right axis
   * @param filled true for an area down to zero in the stroke's grey
   */
  public record Series(
      String name, List<Point> points, Stroke stroke, boolean byRight, boolean filled) {}

  /**
   * A span along the upper edge.
   *
   * @param text what stands beside it; may be empty
   * @param grey of its bar
   * @param pointed true for a triangle at its beginning, so that a short span is seen
   * @param hatched true for a span that is taken up again and again
   */
  public record Mark(
      double from, double to, String text, double grey, boolean pointed, boolean hatched) {}

  /** Draws it into a rectangle that also holds legend, marks and labels. */
  public void draw(List<Shape> into, double x0, double y0, double width, double height) {
    boolean marked = !marks.isEmpty();
    double leftEdge = x0 + 48;
    double rightEdge = x0 + width - 48;
    List<Point> legend = legendPlaces(leftEdge, y0 + SMALL, rightEdge);
    double legendHeight = legend.isEmpty() ? 0 : legend.get(legend.size() - 1).y() - y0 - SMALL;
    double top = y0 + LEGEND + legendHeight + (marked ? 2 * SMALL + MARK : 0);
    double bottom = y0 + height - 32;
    Frame frame = new Frame(leftEdge, top, rightEdge, bottom);
    rules(into, frame);
    series.stream().filter(Series::filled).forEach(s -> curve(into, frame, s));
    series.stream().filter(s -> !s.filled()).forEach(s -> curve(into, frame, s));
    legend(into, legend);
    marks.forEach(m -> mark(into, frame, m));
    into.add(
        new Shape.Path(
            List.of(
                new Point(leftEdge, top),
                new Point(rightEdge, top),
                new Point(rightEdge, bottom),
                new Point(leftEdge, bottom),
                new Point(leftEdge, top)),
            FRAME));
    into.add(
        label(
            (leftEdge + rightEdge) / 2, bottom + 2 * SMALL + 10, x.label(), Anchor.MIDDLE, false));
    into.add(label(x0 + SMALL, (top + bottom) / 2, left.label(), Anchor.MIDDLE, true));
    right.ifPresent(
        r -> into.add(label(x0 + width - 4, (top + bottom) / 2, r.label(), Anchor.MIDDLE, true)));
  }

  private void rules(List<Shape> into, Frame frame) {
    for (Tick tick : x.ticks()) {
      double at = frame.x(x, tick.at());
      into.add(Shape.line(at, frame.top, at, frame.bottom, RULE));
      into.add(label(at, frame.bottom + SMALL + GAP, tick.text(), Anchor.MIDDLE, false));
    }
    for (Tick tick : left.ticks()) {
      double at = frame.y(left, tick.at());
      into.add(
          Shape.line(frame.left, at, frame.right, at, tick.at() == 0 ? Stroke.of(0.8, 0.5) : RULE));
      into.add(label(frame.left - GAP, at + SMALL / 3, tick.text(), Anchor.END, false));
    }
    right.ifPresent(
        axis -> {
          for (Tick tick : axis.ticks()) {
            double at = frame.y(axis, tick.at());
            into.add(label(frame.right + GAP, at + SMALL / 3, tick.text(), Anchor.START, false));
          }
        });
  }

  private void curve(List<Shape> into, Frame frame, Series s) {
    Axis axis = s.byRight() ? right.orElse(left) : left;
    List<Point> points = new ArrayList<>();
    s.points().forEach(p -> points.add(new Point(frame.x(x, p.x()), frame.y(axis, p.y()))));
    if (points.size() < 2) {
      return;
    }
    if (s.filled()) {
      double zero = frame.y(axis, Math.max(axis.from(), 0));
      points.add(new Point(points.get(points.size() - 1).x(), zero));
      points.add(new Point(points.get(0).x(), zero));
      into.add(new Shape.Area(List.copyOf(points), s.stroke().grey()));
    } else {
      into.add(new Shape.Path(List.copyOf(points), s.stroke()));
    }
  }

  /** Where the entries of the legend begin: in lines, as wide as the frame. */
  private List<Point> legendPlaces(double left, double first, double right) {
    List<Point> places = new ArrayList<>();
    double x = left;
    double y = first;
    for (Series s : series) {
      double wide = 28 + 5.2 * s.name().length() + 16;
      if (x > left && x + wide > right + 16) {
        x = left;
        y += LEGEND - 4;
      }
      places.add(new Point(x, y));
      x += wide;
    }
    return places;
  }

  private void legend(List<Shape> into, List<Point> places) {
    for (int i = 0; i < series.size(); i++) {
      Series s = series.get(i);
      double at = places.get(i).x();
      double y = places.get(i).y();
      if (s.filled()) {
        into.add(Shape.box(at, y - 7, 24, 7, s.stroke().grey()));
      } else {
        into.add(Shape.line(at, y - 3, at + 24, y - 3, s.stroke()));
      }
      into.add(label(at + 28, y, s.name(), Anchor.START, false));
    }
  }

  private void mark(List<Shape> into, Frame frame, Mark mark) {
    double a = frame.x(x, mark.from());
    double b = Math.max(a + 1, frame.x(x, mark.to()));
    double y = frame.top - MARK - 1;
    if (mark.hatched()) {
      hatch(into, a, b, y, Stroke.of(0.8, mark.grey()));
    } else {
      into.add(Shape.box(a, y, b - a, MARK, mark.grey()));
    }
    if (mark.pointed()) {
      into.add(
          new Shape.Area(
              List.of(new Point(a - 4, y - 7), new Point(a + 4, y - 7), new Point(a, y)), 0));
      into.add(Shape.line(a, frame.top, a, frame.bottom, Stroke.dashed(0.8, 0, 2, 2)));
    }
    if (!mark.text().isEmpty()) {
      boolean nearEnd = a > (frame.left + 2 * frame.right) / 3;
      into.add(
          label(
              nearEnd ? a - 7 : a + 7,
              y - 2,
              mark.text(),
              nearEnd ? Anchor.END : Anchor.START,
              false));
    }
  }

  /** A frame with strokes across it. */
  private static void hatch(List<Shape> into, double a, double b, double y, Stroke stroke) {
    into.add(Shape.line(a, y, b, y, stroke));
    into.add(Shape.line(a, y + MARK, b, y + MARK, stroke));
    for (double at = a; at <= b; at += GAP) {
      into.add(Shape.line(at, y + MARK, Math.min(at + GAP, b), y, stroke));
    }
  }

  private static Label label(double x, double y, String text, Anchor anchor, boolean turned) {
    return new Label(new Point(x, y), text, SMALL, anchor, turned);
  }

  /** Where the axes lie. */
  private record Frame(double left, double top, double right, double bottom) {
    double x(Axis axis, double value) {
      return left + (value - axis.from()) / (axis.to() - axis.from()) * (right - left);
    }

    double y(Axis axis, double value) {
      return bottom - (value - axis.from()) / (axis.to() - axis.from()) * (bottom - top);
    }
  }
}
