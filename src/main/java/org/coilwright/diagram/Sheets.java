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
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;

/** Puts laid-out areas on sheets, with frame, fields, title block and the key to the findings. */
final class Sheets {
  private static final double FIELDS = 14;
  private static final double TITLE = 42;
  private static final double LEGEND = 26;
  private static final double HEADING = 20;
  private static final double PAD = 6;
  private static final double BETWEEN = 22;
  private static final int FIELD_COUNT = 8;

  private final Netlist netlist;
  private final Extent extent;
  private final Notes notes;
  private final List<Finding> findings;
  private final double width = Diagram.WIDTH;
  private final double height = Diagram.HEIGHT;
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
    this.netlist = netlist;
    this.extent = extent;
    this.notes = notes;
    this.findings = findings;
  }

  static double roomAcross() {
    return Diagram.WIDTH - 2 * PAD;
  }

  static double roomDown() {
    return Diagram.HEIGHT - FIELDS - TITLE - LEGEND - HEADING - PAD;
  }

  private double bottom() {
    return height - TITLE - LEGEND;
  }

  List<DrawnSheet> of(List<AreaLayout> layouts) {
    pack(layouts);
    locate();
    int count = 1 + placed.stream().mapToInt(Placed::sheet).max().orElse(0);
    List<List<Item>> sheets = new ArrayList<>();
    Key key = new Key(extent, findings, notes, width);
    double below = FIELDS;
    for (int sheet = 0; sheet < count; sheet++) {
      List<Item> items = new ArrayList<>();
      below = FIELDS;
      for (Placed one : placed) {
        if (one.sheet() == sheet) {
          items.addAll(headingOf(one));
          AreaDrawing.of(one.layout(), extent, notes, new Located())
              .forEach(item -> items.add(item.at(one.scale(), one.x(), one.y())));
          below = Math.max(below, one.y() + one.height());
        }
      }
      items.addAll(key.under(items, below + 6, bottom()));
      sheets.add(items);
    }
    List<Item> last = sheets.get(count - 1);
    last.addAll(key.remaining(below + 6, Key.top(last, bottom())));
    for (int sheet = 0; sheet < count; sheet++) {
      int number = sheet;
      double lowest =
          placed.stream()
              .filter(p -> p.sheet() == number)
              .mapToDouble(p -> p.y() + p.height())
              .max()
              .orElse(FIELDS);
      List<Item> items = sheets.get(sheet);
      items.addAll(parts(sheet, lowest, Key.top(items, bottom())));
    }
    sheets.addAll(key.rest(FIELDS + 6, bottom()));
    List<DrawnSheet> done = new ArrayList<>();
    for (int sheet = 0; sheet < sheets.size(); sheet++) {
      List<Item> items = sheets.get(sheet);
      items.addAll(frame(sheet + 1, sheets.size()));
      done.add(new DrawnSheet(title(sheet + 1, sheets.size()), shows(sheet), List.copyOf(items)));
    }
    return done;
  }

  /** Each at the first place from the left that is free, upper ones first; else on a new sheet. */
  private void pack(List<AreaLayout> layouts) {
    int sheet = 0;
    for (AreaLayout layout : layouts) {
      Placed found = null;
      for (double[] corner : corners(sheet)) {
        Placed candidate = new Placed(layout, sheet, corner[0], corner[1]);
        if (found == null && isFree(candidate)) {
          found = candidate;
        }
      }
      if (found == null) {
        sheet += placed.isEmpty() ? 0 : 1;
        found = new Placed(layout, sheet, PAD, FIELDS + HEADING);
      }
      placed.add(found);
    }
  }

  private List<double[]> corners(int sheet) {
    List<double[]> corners = new ArrayList<>();
    corners.add(new double[] {PAD, FIELDS + HEADING});
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
    if (right(one) > width - PAD || one.y() + one.height() > bottom()) {
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
          int field = 1 + (int) Math.min(FIELD_COUNT - 1, x / (width / FIELD_COUNT));
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
    return fitted(one.layout().area().title(), room);
  }

  private List<Item> headingOf(Placed one) {
    Pen pen = new Pen().text(one.x(), one.y() - 7, heading(one), Anchor.START, Type.TITLE);
    return List.of(new Item(Kind.FRAME, "heading", pen.shapes()));
  }

  /** What the designations on a sheet are, if there is room to say it. */
  private List<Item> parts(int sheet, double from, double to) {
    List<String> words = new ArrayList<>();
    placed.stream()
        .filter(p -> p.sheet() == sheet)
        .flatMap(p -> p.layout().area().units().stream())
        .map(Unit::part)
        .distinct()
        .forEach(
            name -> {
              Part part = netlist.parts().get(name);
              if (part != null) {
                String label = part.head().label().map(l -> ", " + l).orElse("");
                words.add(name + " " + part.head().is() + label);
              }
            });
    List<String> lines = extent.wrapped(String.join("; ", words) + ".", width - 2 * PAD);
    double top = to - lines.size() * Type.LEADING - 4;
    if (words.isEmpty() || top < from + 4) {
      return List.of();
    }
    List<Item> items = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      items.add(text(PAD, top + 10 + i * Type.LEADING, lines.get(i), Anchor.START));
    }
    return items;
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

  private String title(int sheet, int of) {
    return notes.words().of("diagram.title", netlist.about().title().value(), sheet, of);
  }

  private List<Item> frame(int sheet, int of) {
    List<Item> items = new ArrayList<>();
    Pen lines = new Pen().box(0, 0, width, height).line(0, FIELDS, width, FIELDS);
    double field = width / FIELD_COUNT;
    for (int i = 0; i < FIELD_COUNT; i++) {
      if (i > 0) {
        lines.line(i * field, 0, i * field, FIELDS);
      }
      items.add(text((i + 0.5) * field, FIELDS - 3.5, Integer.toString(i + 1), Anchor.MIDDLE));
    }
    double top = height - TITLE;
    lines.line(0, top, width, top);
    items.add(new Item(Kind.FRAME, "frame", lines.shapes()));
    Diagram.Words words = notes.words();
    items.add(text(PAD, top - 15.5, words.of("diagram.legend-lines"), Anchor.START));
    items.add(text(PAD, top - 4, words.of("diagram.legend-text"), Anchor.START));
    Netlist.About about = netlist.about();
    String number = words.of("diagram.sheet", sheet, of);
    double room = width - 2 * PAD - extent.text(number) - 12;
    items.add(text(width - PAD, top + 12.5, number, Anchor.END));
    items.add(text(PAD, top + 12.5, fitted(about.title().value(), room), Anchor.START));
    String nothing = words.of("not-stated");
    String second =
        words.of(
            "diagram.reference",
            about.reference().orElse(nothing),
            about.revision().orElse(nothing),
            about.date().orElse(nothing),
            about.preparedBy().orElse(nothing));
    items.add(text(PAD, top + 25, fitted(second, width - 2 * PAD), Anchor.START));
    String digest = netlist.text().sha256();
    String third =
        words.of(
            "diagram.digest",
            digest.substring(0, Math.min(12, digest.length())),
            netlist.text().file());
    items.add(text(PAD, top + 37.5, fitted(third, width - 2 * PAD), Anchor.START));
    return items;
  }

  /** The whole text, or as much as there is room for and an ellipsis. */
  private String fitted(String text, double room) {
    if (extent.text(text) <= room) {
      return text;
    }
    int end = text.length();
    while (end > 0 && extent.text(text.substring(0, end) + "…") > room) {
      end = text.offsetByCodePoints(end, -1);
    }
    return text.substring(0, end) + "…";
  }

  private static Item text(double x, double y, String text, Anchor anchor) {
    return new Item(Kind.FRAME, "text", new Pen().text(x, y, text, anchor).shapes());
  }
}
