package org.coilwright.diagram;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.coilwright.diagram.Diagram.Finding;
import org.coilwright.diagram.Item.Kind;
import org.coilwright.drawing.Shape.Anchor;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Terminal;

/** Puts laid-out areas on sheets, with frame, fields, title block and the key to the findings. */
final class Sheets {
  private static final double HEADING = 20;
  private static final double BETWEEN = 22;

  private final Extent extent;
  private final Notes notes;
  private final List<Finding> findings;
  private final double width = Diagram.WIDTH;
  private final Border border;
  private final List<Placed> placed = new ArrayList<>();
  private final Map<Terminal, String> places = new HashMap<>();
  private final Map<String, String> coils = new HashMap<>();

  /** An area and where its upper left corner is. */
  private record Placed(AreaLayout layout, int sheet, double x, double y) {
    /** One, unless a single unit is larger than a sheet. */
    double scale() {
      double fits =
          Math.min(roomAcross() / layout.width(), roomDown() / Math.max(layout.height(), 1));
      return Math.min(1, fits);
    }

    double width() {
      return scale() * layout.width();
    }

    double height() {
      return scale() * layout.height();
    }
  }

  Sheets(Netlist netlist, Extent extent, Notes notes, List<Finding> findings) {
    this.extent = extent;
    this.notes = notes;
    this.border = new Border(netlist, extent, notes);
    this.findings = findings;
  }

  static double roomAcross() {
    return Diagram.WIDTH - 2 * Border.PAD;
  }

  static double roomDown() {
    return Border.bottom() - Border.FIELDS - HEADING - Border.PAD;
  }

  List<DrawnSheet> of(List<AreaLayout> layouts) {
    pack(layouts);
    locate();
    int count = 1 + placed.stream().mapToInt(Placed::sheet).max().orElse(0);
    List<List<Item>> sheets = new ArrayList<>();
    Key key = new Key(extent, findings, notes, width);
    double below = Border.FIELDS;
    for (int sheet = 0; sheet < count; sheet++) {
      List<Item> items = new ArrayList<>();
      below = Border.FIELDS;
      for (Placed one : placed) {
        if (one.sheet() == sheet) {
          items.addAll(headingOf(one));
          AreaDrawing.of(one.layout(), extent, notes, new Located())
              .forEach(item -> items.add(item.at(one.scale(), one.x(), one.y())));
          below = Math.max(below, one.y() + one.height());
        }
      }
      items.addAll(key.under(items, below + 6, Border.bottom()));
      sheets.add(items);
    }
    List<Item> last = sheets.get(count - 1);
    last.addAll(key.remaining(below + 6, Key.top(last, Border.bottom())));
    for (int sheet = 0; sheet < count; sheet++) {
      int number = sheet;
      double lowest =
          placed.stream()
              .filter(p -> p.sheet() == number)
              .mapToDouble(p -> p.y() + p.height())
              .max()
              .orElse(Border.FIELDS);
      List<Item> items = sheets.get(sheet);
      items.addAll(border.parts(parts(sheet), lowest, Key.top(items, Border.bottom())));
    }
    sheets.addAll(key.rest(Border.FIELDS + 6, Border.bottom()));
    List<DrawnSheet> done = new ArrayList<>();
    for (int sheet = 0; sheet < sheets.size(); sheet++) {
      List<Item> items = sheets.get(sheet);
      items.addAll(border.frame(sheet + 1, sheets.size()));
      done.add(
          new DrawnSheet(border.title(sheet + 1, sheets.size()), shows(sheet), List.copyOf(items)));
    }
    return done;
  }

  /**
   * Each at the first place from the left that is free, upper ones first, on the sheet before or on
   * this one; else on a new sheet.
   */
  private void pack(List<AreaLayout> layouts) {
    int sheet = 0;
    for (AreaLayout layout : layouts) {
      Placed found = null;
      for (int on = hasPower(sheet - 1) ? sheet : Math.max(0, sheet - 1); on <= sheet; on++) {
        for (double[] corner : corners(on)) {
          Placed candidate = new Placed(layout, on, corner[0], corner[1]);
          if (found == null && isFree(candidate)) {
            found = candidate;
          }
        }
      }
      if (found == null) {
        sheet += placed.isEmpty() ? 0 : 1;
        found = new Placed(layout, sheet, Border.PAD, Border.FIELDS + HEADING);
      }
      placed.add(found);
    }
  }

  /** True if the power circuit is on a sheet: its own sheet keeps the room for the findings. */
  private boolean hasPower(int sheet) {
    return placed.stream().anyMatch(p -> p.sheet() == sheet && p.layout().area().power());
  }

  private List<double[]> corners(int sheet) {
    List<double[]> corners = new ArrayList<>();
    corners.add(new double[] {Border.PAD, Border.FIELDS + HEADING});
    for (Placed one : placed) {
      if (one.sheet() == sheet) {
        corners.add(new double[] {right(one) + BETWEEN, one.y()});
        corners.add(new double[] {one.x(), one.y() + one.height() + HEADING + 4});
      }
    }
    corners.sort(Comparator.comparingDouble((double[] c) -> c[1]).thenComparingDouble(c -> c[0]));
    return corners;
  }

  private double right(Placed one) {
    double title = extent.text(heading(one)) * Type.TITLE / Type.SIZE;
    return one.x() + Math.max(one.width(), title);
  }

  private boolean isFree(Placed one) {
    if (right(one) > width - Border.PAD || one.y() + one.height() > Border.bottom()) {
      return false;
    }
    return placed.stream()
        .filter(other -> other.sheet() == one.sheet())
        .allMatch(
            other ->
                right(one) + BETWEEN <= other.x()
                    || right(other) + BETWEEN <= one.x()
                    || one.y() + one.height() + HEADING <= other.y()
                    || other.y() + other.height() + HEADING <= one.y());
  }

  private void locate() {
    for (Placed one : placed) {
      Plan plan = one.layout().plan();
      for (Unit unit : plan.places().keySet()) {
        if (unit.look().isReference()) {
          continue;
        }
        for (Unit.Port port : unit.ports()) {
          double x = one.x() + one.scale() * one.layout().spread().x(port);
          int field = 1 + (int) Math.min(Border.FIELD_COUNT - 1, x / (width / Border.FIELD_COUNT));
          String place = "/" + (one.sheet() + 1) + "." + field;
          places.putIfAbsent(port.terminal(), place);
          if (unit.look() == Look.COIL) {
            coils.put(unit.part(), place);
          }
        }
      }
    }
  }

  private final class Located implements AreaDrawing.Places {
    @Override
    public String of(Terminal terminal) {
      return places.getOrDefault(terminal, "");
    }

    @Override
    public String coil(String part) {
      return coils.getOrDefault(part, "");
    }

    @Override
    public String contact(Terminal from, String pins) {
      return places.getOrDefault(from, notes.words().of("diagram.free"));
    }
  }

  private String heading(Placed one) {
    double room = roomAcross() * Type.SIZE / Type.TITLE;
    return border.fitted(one.layout().area().title(), room);
  }

  private List<Item> headingOf(Placed one) {
    Pen pen = new Pen().text(one.x(), one.y() - 7, heading(one), Anchor.START, Type.TITLE);
    return List.of(new Item(Kind.FRAME, "heading", pen.shapes()));
  }

  private List<String> parts(int sheet) {
    return placed.stream()
        .filter(p -> p.sheet() == sheet)
        .flatMap(p -> p.layout().area().units().stream())
        .map(Unit::part)
        .distinct()
        .toList();
  }

  private List<String> shows(int sheet) {
    List<String> shows = new ArrayList<>();
    for (Placed one : placed) {
      if (one.sheet() == sheet) {
        Area area = one.layout().area();
        shows.add(
            area.title()
                + ": "
                + String.join(", ", area.units().stream().map(Unit::part).distinct().toList()));
      }
    }
    return shows.isEmpty() ? List.of(notes.words().of("diagram.findings")) : shows;
  }
}
