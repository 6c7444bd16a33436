package org.coilwright.diagram;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.drawing.Shape;
import org.coilwright.drawing.Shape.Anchor;
import org.coilwright.drawing.Shape.Point;
import org.coilwright.drawing.Shape.Stroke;

/** Collects the strokes of one thing, in black. */
final class Pen {
  private static final int ROUND = 24;

  private final List<Shape> shapes = new ArrayList<>();

  Pen line(double x1, double y1, double x2, double y2) {
    return line(Type.THIN, x1, y1, x2, y2);
  }

  Pen line(double width, double x1, double y1, double x2, double y2) {
    if (x1 != x2 || y1 != y2) {
      shapes.add(Shape.line(x1, y1, x2, y2, Stroke.of(width, 0)));
    }
    return this;
  }

  Pen dashed(double x1, double y1, double x2, double y2) {
    shapes.add(Shape.line(x1, y1, x2, y2, Stroke.dashed(0.6, 0, 3, 2)));
    return this;
  }

  /** A line through points given as x and y in turn. */
  Pen path(double width, double... xy) {
    List<Point> points = new ArrayList<>();
    for (int i = 0; i + 1 < xy.length; i += 2) {
      points.add(new Point(xy[i], xy[i + 1]));
    }
    shapes.add(new Shape.Path(List.copyOf(points), Stroke.of(width, 0)));
    return this;
  }

  Pen box(double x, double y, double width, double height) {
    return path(Type.THIN, x, y, x + width, y, x + width, y + height, x, y + height, x, y);
  }

  Pen dashedBox(double x, double y, double width, double height) {
    shapes.add(
        new Shape.Path(
            List.of(
                new Point(x, y),
                new Point(x + width, y),
                new Point(x + width, y + height),
                new Point(x, y + height),
                new Point(x, y)),
            Stroke.dashed(0.5, 0, 4, 2)));
    return this;
  }

  Pen area(double... xy) {
    List<Point> points = new ArrayList<>();
    for (int i = 0; i + 1 < xy.length; i += 2) {
      points.add(new Point(xy[i], xy[i + 1]));
    }
    shapes.add(new Shape.Area(List.copyOf(points), 0));
    return this;
  }

  Pen circle(double x, double y, double radius) {
    return oval(x, y, radius, radius);
  }

  Pen oval(double x, double y, double across, double down) {
    shapes.add(new Shape.Path(arc(x, y, across, down, 0, 2 * Math.PI), Stroke.of(Type.THIN, 0)));
    return this;
  }

  /** Half a circle open to the left. */
  Pen halfCircle(double x, double y, double radius) {
    shapes.add(
        new Shape.Path(
            arc(x, y, radius, radius, -Math.PI / 2, Math.PI / 2), Stroke.of(Type.THIN, 0)));
    return this;
  }

  Pen dot(double x, double y) {
    shapes.add(new Shape.Area(arc(x, y, 2.1, 2.1, 0, 2 * Math.PI), 0));
    return this;
  }

  private static List<Point> arc(
      double x, double y, double across, double down, double from, double to) {
    List<Point> points = new ArrayList<>();
    for (int i = 0; i <= ROUND; i++) {
      double angle = from + (to - from) * i / ROUND;
      points.add(new Point(x + across * Math.cos(angle), y + down * Math.sin(angle)));
    }
    return List.copyOf(points);
  }

  Pen text(double x, double y, String text, Anchor anchor) {
    return text(x, y, text, anchor, Type.SIZE);
  }

  Pen text(double x, double y, String text, Anchor anchor, double size) {
    shapes.add(new Shape.Label(new Point(x, y), text, size, anchor, false));
    return this;
  }

  List<Shape> shapes() {
    return List.copyOf(shapes);
  }
}
