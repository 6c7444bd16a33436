package org.coilwright.diagram;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.coilwright.diagram.Item.Kind;
import org.coilwright.drawing.Shape;
import org.coilwright.drawing.Shape.Point;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Wire;

/** Holds sheets against the netlist: every conductor from pin to pin, every pin named once. */
final class Coverage {
  /** As far as the end of a line may be from the name of its pin. */
  private static final double NEAR = 12;

  private final Netlist netlist;
  private final List<DrawnSheet> sheets;
  private final List<String> found = new ArrayList<>();

  private Coverage(Netlist netlist, List<DrawnSheet> sheets) {
    this.netlist = netlist;
    this.sheets = sheets;
  }

  /** One sentence for each fault. */
  static List<String> of(Netlist netlist, List<DrawnSheet> sheets) {
    Coverage coverage = new Coverage(netlist, sheets);
    coverage.pins();
    coverage.wires();
    return coverage.found;
  }

  private void pins() {
    Map<String, Integer> named = new HashMap<>();
    StringBuilder tables = new StringBuilder();
    for (DrawnSheet sheet : sheets) {
      for (Item item : sheet.items()) {
        if (item.kind() == Kind.PIN) {
          named.merge(item.of(), 1, Integer::sum);
        } else if (item.kind() == Kind.TABLE) {
          item.shapes().stream()
              .filter(Shape.Label.class::isInstance)
              .forEach(
                  l ->
                      tables
                          .append(item.of())
                          .append(' ')
                          .append(((Shape.Label) l).text())
                          .append('\n'));
        }
      }
    }
    for (Part part : netlist.parts().values()) {
      for (String pin : part.pins()) {
        int count = named.getOrDefault(part.name() + "." + pin, 0);
        boolean spare =
            part instanceof Part.Relay relay
                && relay.contacts().stream()
                    .filter(c -> c.from().equals(pin) || c.to().equals(pin))
                    .anyMatch(
                        c -> tables.indexOf(part.name() + " " + c.from() + "–" + c.to()) >= 0);
        if (count != 1 && !(count == 0 && spare) && !isShared(part, pin)) {
          found.add(part.name() + "." + pin + " is named " + count + " times");
        }
      }
    }
  }

  /** A terminal of a device that serves two of its functions stands at both. */
  private static boolean isShared(Part part, String pin) {
    if (part instanceof Part.Relay relay) {
      return relay.contacts().stream()
              .filter(c -> c.from().equals(pin) || c.to().equals(pin))
              .count()
          > 1;
    }
    return part instanceof Part.Controller controller
        && controller.outputs().values().stream()
            .anyMatch(o -> o.from().equals(pin) || o.to().equals(pin));
  }

  private void wires() {
    for (int i = 0; i < netlist.wires().size(); i++) {
      Wire wire = netlist.wires().get(i);
      String name = "wire " + (i + 1);
      int drawn = 0;
      int told = 0;
      for (DrawnSheet sheet : sheets) {
        for (Item item : sheet.items()) {
          if (item.kind() == Kind.WIRE && item.of().equals(name)) {
            drawn++;
            ends(sheet, item, wire);
          } else if (item.kind() == Kind.WIRE_TEXT && item.of().equals(name)) {
            told++;
          }
        }
      }
      if (drawn == 0) {
        found.add(name + " is not drawn");
      }
      if (told == 0) {
        found.add(name + " has no text");
      }
    }
  }

  private void ends(DrawnSheet sheet, Item item, Wire wire) {
    List<Point> points = ((Shape.Path) item.shapes().get(0)).points();
    Point first = points.get(0);
    Point last = points.get(points.size() - 1);
    String from = wire.from().value().toString();
    String to = wire.to().value().toString();
    boolean along = isAt(sheet, first, from) && isAt(sheet, last, to);
    boolean back = isAt(sheet, first, to) && isAt(sheet, last, from);
    if (!along && !back) {
      found.add(item.of() + " does not run from " + from + " to " + to);
    }
  }

  private static boolean isAt(DrawnSheet sheet, Point point, String terminal) {
    for (Item item : sheet.items()) {
      boolean is =
          switch (item.kind()) {
            case PIN -> item.of().equals(terminal) && isNear(item, point);
            case BAR -> item.of().equals(terminal) && isOn(item, point);
            case SYMBOL ->
                (item.of().equals(terminal + " above") || item.of().equals(terminal + " below"))
                    && isOn(item, point);
            default -> false;
          };
      if (is) {
        return true;
      }
    }
    return false;
  }

  private static boolean isNear(Item pin, Point point) {
    Point at = ((Shape.Label) pin.shapes().get(0)).at();
    double dy = at.y() - point.y();
    // a clamp is named above, its conductors may come from below as well
    return Math.abs(at.x() - Extent.GAP - point.x()) < 0.1 && dy > -60 && dy < NEAR;
  }

  private static boolean isOn(Item item, Point point) {
    for (Shape shape : item.shapes()) {
      if (shape instanceof Shape.Path path) {
        for (int i = 1; i < path.points().size(); i++) {
          if (distance(point, path.points().get(i - 1), path.points().get(i)) < 0.1) {
            return true;
          }
        }
      }
    }
    return false;
  }

  private static double distance(Point p, Point a, Point b) {
    double dx = b.x() - a.x();
    double dy = b.y() - a.y();
    double length = dx * dx + dy * dy;
    double t =
        length == 0
            ? 0
            : Math.max(0, Math.min(1, ((p.x() - a.x()) * dx + (p.y() - a.y()) * dy) / length));
    return Math.hypot(p.x() - a.x() - t * dx, p.y() - a.y() - t * dy);
  }
}
