package org.coilwright.drawing;

import java.util.List;

/** What a picture consists of; points from the upper left corner, y downwards. */
public sealed interface Shape {
  /** The same at another place. */
  Shape moved(double dx, double dy);

  /** The same larger or smaller, lines and letters with it, seen from the upper left corner. */
  Shape scaled(double by);

  /**
   * A line through points.
   *
   * @param points at least two
   */
  record Path(List<Point> points, Stroke stroke) implements Shape {
    @Override
    public Path moved(double dx, double dy) {
      return new Path(points.stream().map(p -> p.moved(dx, dy)).toList(), stroke);
    }

    @Override
    public Path scaled(double by) {
      return new Path(points.stream().map(p -> p.scaled(by)).toList(), stroke.scaled(by));
    }
  }

  /**
   * A filled area.
   *
   * @param points at least three
   * @param grey 0 black to 1 white
   */
  record Area(List<Point> points, double grey) implements Shape {
    @Override
    public Area moved(double dx, double dy) {
      return new Area(points.stream().map(p -> p.moved(dx, dy)).toList(), grey);
    }

    @Override
    public Area scaled(double by) {
      return new Area(points.stream().map(p -> p.scaled(by)).toList(), grey);
    }
  }

  /**
   * A line of text.
   *
   * @param at where it is anchored, on its base line
   * @param size of the letters
   * @param turned a quarter to the left, to be read upwards
   */
  record Label(Point at, String text, double size, Anchor anchor, boolean turned) implements Shape {
    @Override
    public Label moved(double dx, double dy) {
      return new Label(at.moved(dx, dy), text, size, anchor, turned);
    }

    @Override
    public Label scaled(double by) {
      return new Label(at.scaled(by), text, by * size, anchor, turned);
    }
  }

  /** A place. */
  record Point(double x, double y) {
    /** The same moved. */
    public Point moved(double dx, double dy) {
      return new Point(x + dx, y + dy);
    }

    /** The same, so many times as far from the upper left corner. */
    public Point scaled(double by) {
      return new Point(by * x, by * y);
    }
  }

  /**
   * How a line is drawn.
   *
   * @param grey 0 black to 1 white
   * @param dashes lengths of dash and gap in turn; empty for a whole line
   */
  record Stroke(double width, double grey, List<Double> dashes) {
    /** A whole line. */
    public static Stroke of(double width, double grey) {
      return new Stroke(width, grey, List.of());
    }

    /** So many times as wide. */
    public Stroke scaled(double by) {
      return new Stroke(by * width, grey, dashes.stream().map(d -> by * d).toList());
    }

    /** A broken line. */
    public static Stroke dashed(double width, double grey, double... dashes) {
      return new Stroke(width, grey, java.util.Arrays.stream(dashes).boxed().toList());
    }
  }

  /** Which part of a text stands at its place. */
  enum Anchor {
    START,
    MIDDLE,
    END
  }

  /** A straight line. */
  static Path line(double x1, double y1, double x2, double y2, Stroke stroke) {
    return new Path(List.of(new Point(x1, y1), new Point(x2, y2)), stroke);
  }

  /** A filled rectangle. */
  static Area box(double x, double y, double width, double height, double grey) {
    return new Area(
        List.of(
            new Point(x, y),
            new Point(x + width, y),
            new Point(x + width, y + height),
            new Point(x, y + height)),
        grey);
  }
}
