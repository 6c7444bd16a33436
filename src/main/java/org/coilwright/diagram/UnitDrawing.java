package org.coilwright.diagram;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.diagram.Item.Kind;
import org.coilwright.diagram.Unit.Port;
import org.coilwright.drawing.Shape.Anchor;
import org.coilwright.netlist.Terminal;

/** Draws a unit with its pins and what stands beside and beneath it. */
final class UnitDrawing {
  private final Unit unit;
  private final AreaLayout layout;
  private final Extent extent;
  private final Notes notes;
  private final AreaDrawing.Places places;
  private final List<Item> items = new ArrayList<>();

  private UnitDrawing(
      Unit unit, AreaLayout layout, Extent extent, Notes notes, AreaDrawing.Places places) {
    this.unit = unit;
    this.layout = layout;
    this.extent = extent;
    this.notes = notes;
    this.places = places;
  }

  static List<Item> of(
      Unit unit, AreaLayout layout, Extent extent, Notes notes, AreaDrawing.Places places) {
    UnitDrawing drawing = new UnitDrawing(unit, layout, extent, notes, places);
    drawing.draw();
    return drawing.items;
  }

  private void draw() {
    Plan plan = layout.plan();
    Spread spread = layout.spread();
    int level = plan.level(unit);
    double[] x = plan.at(unit).stream().mapToDouble(spread::at).toArray();
    double top = spread.top(level);
    double height = spread.height(level);
    items.add(new Item(Kind.SYMBOL, unit.name(), Symbols.of(unit, x, top, height)));
    if (unit.look().isList()) {
      list(x[0], top, height);
      return;
    } else if (unit.look().isReference()) {
      reference(x[0], top, height);
      return;
    }
    for (Port port : unit.ports()) {
      pin(port, x[port.slot()], top, height);
    }
    beside(x, top);
    if (layout.tables().has(unit)) {
      table(x[0]);
    }
  }

  private void pin(Port port, double x, double top, double height) {
    if (unit.look() == Look.CLAMPS && !port.isTop()) {
      return; // both sides of a clamp are one terminal: named once
    }
    double y = port.isTop() ? top + 9 : top + height - 3;
    items.add(
        new Item(
            Kind.PIN,
            port.terminal().toString(),
            new Pen().text(x + Extent.GAP, y, port.terminal().pin(), Anchor.START).shapes()));
    if (unit.look() == Look.RESERVED) {
      items.add(
          new Item(
              Kind.SYMBOL_TEXT,
              unit.name(),
              new Pen()
                  .text(x + 6, top + 31, unit.words().get(port.slot()), Anchor.START)
                  .shapes()));
    }
  }

  private void beside(double[] x, double top) {
    double right = x[0] - Extent.body(unit) - Extent.GAP;
    double y = top + 10;
    for (String line : notes.lines(unit)) {
      boolean name = y == top + 10;
      String text = line.equals(Notes.WIDEST_PLACE) ? places.coil(unit.part()) : line;
      Pen pen = new Pen().text(right, y, text, Anchor.END, name ? Type.NAME : Type.SIZE);
      items.add(new Item(Kind.SYMBOL_TEXT, unit.name(), pen.shapes()));
      y += Type.LEADING;
    }
    for (List<Integer> row : Extent.rows(notes.markers(unit))) {
      markers(items, extent, row, right - extent.markers(row) + 2, y);
      y += Type.LEADING;
    }
  }

  /** Boxes with the numbers of findings, side by side. */
  static void markers(List<Item> items, Extent extent, List<Integer> row, double left, double y) {
    double x = left;
    for (int number : row) {
      double width = extent.marker(number);
      Pen pen =
          new Pen()
              .box(x, y - 9, width, 10.5)
              .text(x + width / 2, y - 0.5, Integer.toString(number), Anchor.MIDDLE);
      items.add(new Item(Kind.MARKER, Integer.toString(number), pen.shapes()));
      x += width + 2;
    }
  }

  private void reference(double x, double top, double height) {
    Terminal terminal = unit.ports().get(0).terminal();
    double y = unit.look() == Look.FROM ? top + height - 24 : top + 19;
    items.add(
        new Item(
            Kind.SYMBOL_TEXT,
            unit.name(),
            new Pen().text(x, y, terminal.toString(), Anchor.MIDDLE).shapes()));
    items.add(
        new Item(
            Kind.SYMBOL_TEXT,
            unit.name(),
            new Pen().text(x, y + Type.LEADING, places.of(terminal), Anchor.MIDDLE).shapes()));
  }

  private void list(double x, double top, double height) {
    double y =
        unit.look() == Look.LIST_BELOW
            ? top + 19
            : top + height - 12 - (unit.words().size() - 1) * Type.LEADING;
    for (String line : unit.words()) {
      String text = Notes.listed(line, places.of(Notes.otherEnd(line)));
      Pen pen = new Pen().text(x - Extent.LIST_LEFT, y, text, Anchor.START);
      items.add(new Item(Kind.SYMBOL_TEXT, unit.name(), pen.shapes()));
      y += Type.LEADING;
    }
  }

  private void table(double x) {
    Tables tables = layout.tables();
    List<Tables.Row> rows = tables.rows(unit);
    if (rows.isEmpty()) {
      return;
    }
    double top = layout.spread().tableTop() + 6;
    double second = x + tables.pinsWidth(unit);
    double third = second + tables.formWidth();
    Pen pen = new Pen().line(x, top + 13, x + tables.width(unit) - 4, top + 13);
    items.add(new Item(Kind.TABLE, unit.part(), pen.shapes()));
    text(x, top + 10, notes.words().of("diagram.contacts", unit.part()));
    double y = top + 13 + Type.LEADING - 1;
    for (Tables.Row row : rows) {
      text(x, y, row.pins());
      text(second, y, row.form());
      text(third, y, places.contact(new Terminal(unit.part(), row.from()), row.pins()));
      y += Type.LEADING;
    }
  }

  private void text(double x, double y, String text) {
    items.add(new Item(Kind.TABLE, unit.part(), new Pen().text(x, y, text, Anchor.START).shapes()));
  }
}
