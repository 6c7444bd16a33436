package org.coilwright.diagram;

import java.util.ArrayList;
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
  private static final double FIELDS = 14;
  private static final double TITLE = 50;
  private static final double LEGEND = 28;
  private static final double HEADING = 24;
  private static final double PAD = 8;
  private static final double BETWEEN = 22;
  private static final int FIELD_COUNT = 8;

  private final Netlist netlist;
  private final Extent extent;
  private final Notes notes;
  private final List<Finding> findings;
  private final double width;
  private final double height;
  private final List<Placed> placed = new ArrayList<>();
  private final Map<Terminal, String> places = new HashMap<>();
  private final Map<String, String> coils = new HashMap<>();

  /** An area and where its upper left corner is. */
  private record Placed(AreaLayout layout, int sheet, double x, double y) {}

  Sheets(
      Netlist netlist,
      Extent extent,
      Notes notes,
      List<Finding> findings,
      double width,
      double height) {
    this.netlist = netlist;
    this.extent = extent;
    this.notes = notes;
    this.findings = findings;
    this.width = width;
    this.height = height;
  }

  static double roomAcross(double width) {
    return width - 2 * PAD;
  }

  static double roomDown(double height) {
    return height - FIELDS - TITLE - LEGEND - HEADING - PAD;
  }

  private double bottom() {
    return height - TITLE - LEGEND;
  }

  List<Sheet> of(List<AreaLayout> layouts) {
    pack(layouts);
    locate();
    int count = 1 + placed.stream().mapToInt(Placed::sheet).max().orElse(0);
    List<List<Item>> sheets = new ArrayList<>();
    Key key = new Key(extent, findings, notes, width);
    for (int sheet = 0; sheet < count; sheet++) {
      List<Item> items = new ArrayList<>();
      double below = FIELDS;
      for (Placed one : placed) {
        if (one.sheet() == sheet) {
          items.addAll(heading(one));
          items.addAll(
              AreaDrawing.of(one.layout(), extent, notes, new Located(), one.x(), one.y()));
          below = Math.max(below, one.y() + one.layout().height());
        }
      }
      items.addAll(key.under(items, below + 6, bottom()));
      sheets.add(items);
    }
    sheets.addAll(key.rest(FIELDS + 6, bottom()));
    List<Sheet> done = new ArrayList<>();
    for (int sheet = 0; sheet < sheets.size(); sheet++) {
      List<Item> items = sheets.get(sheet);
      items.addAll(frame(sheet + 1, sheets.size()));
      done.add(new Sheet(width, height, title(sheet + 1, sheets.size()), List.copyOf(items)));
    }
    return done;
  }

  /** Side by side while there is room, then below, then on the next sheet. */
  private void pack(List<AreaLayout> layouts) {
    int sheet = 0;
    double x = PAD;
    double y = FIELDS + HEADING;
    double shelf = 0;
    for (AreaLayout layout : layouts) {
      double wide = Math.max(layout.width(), extent.text(layout.area().title()) * 1.3);
      boolean first = x == PAD && y == FIELDS + HEADING;
      if (!first && x + wide > width - PAD) {
        x = PAD;
        y += shelf + HEADING;
        shelf = 0;
      }
      if (!first && y + layout.height() > bottom()) {
        sheet++;
        x = PAD;
        y = FIELDS + HEADING;
        shelf = 0;
      }
      placed.add(new Placed(layout, sheet, x, y));
      x += wide + BETWEEN;
      shelf = Math.max(shelf, layout.height());
    }
  }

  private void locate() {
    for (Placed one : placed) {
      Plan plan = one.layout().plan();
      for (Unit unit : plan.places().keySet()) {
        if (unit.look().isReference()) {
          continue;
        }
        for (Unit.Port port : unit.ports()) {
          double x = one.x() + one.layout().spread().x(port);
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
      return places.getOrDefault(from, "free");
    }
  }

  private List<Item> heading(Placed one) {
    Pen pen =
        new Pen()
            .text(one.x(), one.y() - 10, one.layout().area().title(), Anchor.START, Type.TITLE);
    return List.of(new Item(Kind.FRAME, "heading", pen.shapes()));
  }

  private String title(int sheet, int of) {
    return "Circuit diagram, " + netlist.about().title().value() + ", sheet " + sheet + " of " + of;
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
    items.add(
        text(
            PAD,
            top - 15.5,
            "Thick line: one terminal, on which several conductors land. Thin line: one conductor;",
            Anchor.START));
    items.add(
        text(
            PAD,
            top - 4,
            "beside it its number, run, size and colour. /2.4: sheet 2, field 4. Box: finding.",
            Anchor.START));
    Netlist.About about = netlist.about();
    String number = "sheet " + sheet + " of " + of;
    double room = width - 2 * PAD - extent.text(number) - 12;
    items.add(text(width - PAD, top + 14, number, Anchor.END));
    items.add(text(PAD, top + 14, fitted(about.title().value(), room), Anchor.START));
    String second =
        "reference "
            + about.reference().orElse("not stated")
            + ", revision "
            + about.revision().orElse("not stated")
            + ", date "
            + about.date().orElse("not stated")
            + about.preparedBy().map(by -> ", prepared by " + by).orElse("");
    items.add(text(PAD, top + 28, fitted(second, width - 2 * PAD), Anchor.START));
    String digest = netlist.text().sha256();
    String third =
        "SHA-256 "
            + digest.substring(0, Math.min(12, digest.length()))
            + " … of "
            + netlist.text().file();
    items.add(text(PAD, top + 42, fitted(third, width - 2 * PAD), Anchor.START));
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
