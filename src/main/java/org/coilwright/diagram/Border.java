package org.coilwright.diagram;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.diagram.Item.Kind;
import org.coilwright.drawing.Shape.Anchor;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Part;

/** What stands around the areas of a sheet: fields, frame, legend, title block, what parts are. */
final class Border {
  /** Height of the numbered fields along the upper edge. */
  static final double FIELDS = 14;

  /** How many there are. */
  static final int FIELD_COUNT = 8;

  static final double PAD = 6;
  private static final double TITLE = 42;
  private static final double LEGEND = 26;

  private final Netlist netlist;
  private final Extent extent;
  private final Notes notes;
  private final double width = Diagram.WIDTH;
  private final double height = Diagram.HEIGHT;

  Border(Netlist netlist, Extent extent, Notes notes) {
    this.netlist = netlist;
    this.extent = extent;
    this.notes = notes;
  }

  /** Where the room for areas ends. */
  static double bottom() {
    return Diagram.HEIGHT - TITLE - LEGEND;
  }

  /** What the designations on a sheet are, if there is room to say it. */
  List<Item> parts(List<String> names, double from, double to) {
    List<String> words = new ArrayList<>();
    for (String name : names) {
      Part part = netlist.parts().get(name);
      if (part != null) {
        String label = part.head().label().map(l -> ", " + l).orElse("");
        words.add(name + " " + part.head().is() + label);
      }
    }
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

  String title(int sheet, int of) {
    return notes.words().of("diagram.title", netlist.about().title().value(), sheet, of);
  }

  List<Item> frame(int sheet, int of) {
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
  String fitted(String text, double room) {
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
