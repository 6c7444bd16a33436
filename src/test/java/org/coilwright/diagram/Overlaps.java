package org.coilwright.diagram;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.diagram.Item.Kind;
import org.coilwright.drawing.Letters;
import org.coilwright.drawing.Shape;
import org.coilwright.drawing.Shape.Point;

/** Measures a sheet by its shapes alone: what stands on what, and what stands outside. */
final class Overlaps {
  private static final Letters LETTERS = Letters.load();

  /** Things may touch, but not more than this, in points. */
  private static final double TOUCH = 0.3;

  private final DrawnSheet sheet;
  private final List<String> found = new ArrayList<>();
  private final List<Text> texts = new ArrayList<>();
  private final List<Stroke> strokes = new ArrayList<>();
  private final List<Body> bodies = new ArrayList<>();

  private record Box(double left, double top, double right, double bottom) {
    boolean meets(Box other, double slack) {
      return left + slack < other.right
          && other.left + slack < right
          && top + slack < other.bottom
          && other.top + slack < bottom;
    }
  }

  private record Text(Item item, Shape.Label label, Box box) {}

  /** {@code piece} is the number of its item on the sheet. */
  private record Stroke(int piece, Item item, Point a, Point b, double width) {}

  private record Body(Item item, Box box) {}

  private Overlaps(DrawnSheet sheet) {
    this.sheet = sheet;
  }

  /** One sentence for each fault. */
  static List<String> of(DrawnSheet sheet) {
    Overlaps overlaps = new Overlaps(sheet);
    overlaps.gather();
    overlaps.measure();
    return overlaps.found;
  }

  private void gather() {
    for (int piece = 0; piece < sheet.items().size(); piece++) {
      Item item = sheet.items().get(piece);
      List<Point> corners = new ArrayList<>();
      for (Shape shape : item.shapes()) {
        if (shape instanceof Shape.Label label) {
          texts.add(new Text(item, label, box(label)));
        } else if (shape instanceof Shape.Path path) {
          for (int i = 1; i < path.points().size(); i++) {
            strokes.add(
                new Stroke(
                    piece,
                    item,
                    path.points().get(i - 1),
                    path.points().get(i),
                    path.stroke().width()));
          }
          corners.addAll(path.points());
        } else if (shape instanceof Shape.Area area) {
          List<Point> points = area.points();
          for (int i = 0; i < points.size(); i++) {
            strokes.add(
                new Stroke(piece, item, points.get(i), points.get((i + 1) % points.size()), 0));
          }
          corners.addAll(points);
        }
      }
      if (item.kind() == Kind.SYMBOL && !corners.isEmpty()) {
        bodies.add(new Body(item, around(corners)));
      }
    }
  }

  private static Box around(List<Point> points) {
    return new Box(
        points.stream().mapToDouble(Point::x).min().orElse(0),
        points.stream().mapToDouble(Point::y).min().orElse(0),
        points.stream().mapToDouble(Point::x).max().orElse(0),
        points.stream().mapToDouble(Point::y).max().orElse(0));
  }

  private static Box box(Shape.Label label) {
    double width = LETTERS.width(label.text(), label.size());
    double left =
        switch (label.anchor()) {
          case START -> label.at().x();
          case MIDDLE -> label.at().x() - width / 2;
          case END -> label.at().x() - width;
        };
    double y = label.at().y();
    return new Box(left, y - Letters.CAPITAL * label.size(), left + width, y + 0.15 * label.size());
  }

  private void measure() {
    for (int i = 0; i < texts.size(); i++) {
      Text text = texts.get(i);
      if (text.label().size() * Letters.CAPITAL < 2.5 * 72 / 25.4) {
        found.add("letters too small: " + text.label().text());
      }
      inFrame(text.item(), text.box());
      for (int j = i + 1; j < texts.size(); j++) {
        if (text.box().meets(texts.get(j).box(), TOUCH)) {
          found.add("text on text: " + name(text) + " and " + name(texts.get(j)));
        }
      }
      for (Stroke stroke : strokes) {
        if (crosses(stroke, text.box(), TOUCH)) {
          found.add("line through text: " + name(stroke.item()) + " and " + name(text));
        }
      }
    }
    for (Stroke stroke : strokes) {
      inFrame(stroke.item(), around(List.of(stroke.a(), stroke.b())));
      boolean runs = stroke.item().kind() == Kind.WIRE || stroke.item().kind() == Kind.BAR;
      for (Body body : bodies) {
        if (runs && crosses(stroke, body.box(), 0.7 + stroke.width() / 2)) {
          found.add("line through symbol: " + name(stroke.item()) + " and " + name(body.item()));
        }
      }
    }
    for (int i = 0; i < bodies.size(); i++) {
      for (int j = i + 1; j < bodies.size(); j++) {
        if (bodies.get(i).box().meets(bodies.get(j).box(), TOUCH)) {
          found.add(
              "symbol on symbol: "
                  + name(bodies.get(i).item())
                  + " and "
                  + name(bodies.get(j).item()));
        }
      }
    }
    alongEachOther();
  }

  /** Two lines that run on top of each other cannot be told apart. */
  private void alongEachOther() {
    List<Stroke> lines =
        strokes.stream()
            .filter(s -> s.item().kind() == Kind.WIRE || s.item().kind() == Kind.BAR)
            .filter(s -> s.width() > 0)
            .toList();
    for (int i = 0; i < lines.size(); i++) {
      for (int j = i + 1; j < lines.size(); j++) {
        Stroke a = lines.get(i);
        Stroke b = lines.get(j);
        if (a.piece() != b.piece() && (together(a, b, true) || together(a, b, false))) {
          found.add("line on line: " + name(a.item()) + " and " + name(b.item()));
        }
      }
    }
  }

  private static boolean together(Stroke a, Stroke b, boolean upright) {
    double apart = upright ? a.a().x() - b.a().x() : a.a().y() - b.a().y();
    boolean both = isAlong(a, upright) && isAlong(b, upright);
    double from = Math.max(low(a, upright), low(b, upright));
    double to = Math.min(high(a, upright), high(b, upright));
    return both && Math.abs(apart) < 1.5 && to - from > 0.5;
  }

  private static boolean isAlong(Stroke s, boolean upright) {
    return upright ? s.a().x() == s.b().x() : s.a().y() == s.b().y();
  }

  private static double low(Stroke s, boolean upright) {
    return upright ? Math.min(s.a().y(), s.b().y()) : Math.min(s.a().x(), s.b().x());
  }

  private static double high(Stroke s, boolean upright) {
    return upright ? Math.max(s.a().y(), s.b().y()) : Math.max(s.a().x(), s.b().x());
  }

  private void inFrame(Item item, Box box) {
    if (box.left() < -TOUCH
        || box.top() < -TOUCH
        || box.right() > Diagram.WIDTH + TOUCH
        || box.bottom() > Diagram.HEIGHT + TOUCH) {
      found.add("outside the frame: " + name(item));
    }
  }

  /** True if a stroke enters a box by more than {@code slack} (Liang and Barsky's clipping). */
  private static boolean crosses(Stroke stroke, Box box, double slack) {
    double half = stroke.width() / 2;
    double left = box.left() + slack - half;
    double right = box.right() - slack + half;
    double top = box.top() + slack - half;
    double bottom = box.bottom() - slack + half;
    if (left >= right || top >= bottom) {
      return false;
    }
    double dx = stroke.b().x() - stroke.a().x();
    double dy = stroke.b().y() - stroke.a().y();
    double[] p = {-dx, dx, -dy, dy};
    double[] q = {
      stroke.a().x() - left, right - stroke.a().x(), stroke.a().y() - top, bottom - stroke.a().y()
    };
    double from = 0;
    double to = 1;
    for (int i = 0; i < 4; i++) {
      if (p[i] == 0) {
        if (q[i] <= 0) {
          return false;
        }
      } else if (p[i] < 0) {
        from = Math.max(from, q[i] / p[i]);
      } else {
        to = Math.min(to, q[i] / p[i]);
      }
    }
    return from < to;
  }

  private static String name(Text text) {
    return name(text.item()) + " \"" + text.label().text() + "\"";
  }

  private static String name(Item item) {
    return item.kind() + " " + item.of();
  }
}
