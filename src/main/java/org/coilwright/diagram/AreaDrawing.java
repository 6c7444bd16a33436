package org.coilwright.diagram;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.diagram.Item.Kind;
import org.coilwright.diagram.Unit.Port;
import org.coilwright.drawing.Shape.Anchor;
import org.coilwright.netlist.Terminal;

/** Puts an area on its sheet. */
final class AreaDrawing {
  private final AreaLayout layout;
  private final Spread spread;
  private final Channels channels;
  private final Plan plan;
  private final Extent extent;
  private final Notes notes;
  private final Places places;
  private final Diagram.Words words;
  private final List<Item> items = new ArrayList<>();

  private AreaDrawing(AreaLayout layout, Extent extent, Notes notes, Places places) {
    this.layout = layout;
    this.spread = layout.spread();
    this.channels = layout.channels();
    this.plan = layout.plan();
    this.extent = extent;
    this.notes = notes;
    this.places = places;
    this.words = notes.words();
  }

  static List<Item> of(AreaLayout layout, Extent extent, Notes notes, Places places) {
    AreaDrawing drawing = new AreaDrawing(layout, extent, notes, places);
    drawing.plan.places().forEach(drawing::unit);
    drawing.plan.routes().values().forEach(drawing::conductor);
    drawing.plan.places().keySet().forEach(drawing::bars);
    return drawing.items;
  }

  private void unit(Unit unit, List<Column> columns) {
    int level = plan.level(unit);
    double[] x = columns.stream().mapToDouble(spread::at).toArray();
    double top = spread.top(level);
    double height = spread.height(level);
    items.add(new Item(Kind.SYMBOL, unit.name(), Symbols.of(unit, x, top, height)));
    if (unit.look().isList()) {
      list(unit, x[0], top, height);
      return;
    } else if (unit.look().isReference()) {
      reference(unit, x[0], top, height);
      return;
    }
    for (Port port : unit.ports()) {
      pin(unit, port, x[port.slot()], top, height);
    }
    beside(unit, x, top);
    if (layout.tables().has(unit)) {
      table(unit, x[0]);
    }
  }

  private void pin(Unit unit, Port port, double x, double top, double height) {
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

  private void beside(Unit unit, double[] x, double top) {
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
      markers(row, right - extent.markers(row) + 2, y);
      y += Type.LEADING;
    }
  }

  private void markers(List<Integer> row, double left, double y) {
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

  private void reference(Unit unit, double x, double top, double height) {
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

  private void list(Unit unit, double x, double top, double height) {
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

  private void table(Unit unit, double x) {
    Tables tables = layout.tables();
    List<Tables.Row> rows = tables.rows(unit);
    if (rows.isEmpty()) {
      return;
    }
    double top = spread.tableTop() + 6;
    double second = x + tables.pinsWidth(unit);
    double third = second + tables.formWidth();
    Pen pen = new Pen().line(x, top + 13, x + tables.width(unit) - 4, top + 13);
    items.add(new Item(Kind.TABLE, unit.part(), pen.shapes()));
    text(unit, x, top + 10, words.of("diagram.contacts", unit.part()));
    double y = top + 13 + Type.LEADING - 1;
    for (Tables.Row row : rows) {
      text(unit, x, y, row.pins());
      text(unit, second, y, row.form());
      text(unit, third, y, places.contact(new Terminal(unit.part(), row.from()), row.pins()));
      y += Type.LEADING;
    }
  }

  private void text(Unit unit, double x, double y, String text) {
    items.add(new Item(Kind.TABLE, unit.part(), new Pen().text(x, y, text, Anchor.START).shapes()));
  }

  private double barY(Port port) {
    return spread.channelTop(plan.channel(port)) + channels.barY(port);
  }

  private double x(Column column) {
    return spread.at(column);
  }

  private double x(Port port) {
    return spread.x(port);
  }

  private double y(Port port) {
    return spread.y(port);
  }

  private double acrossY(Route route, boolean upper) {
    Port end = upper ? route.upper() : route.lower();
    return spread.channelTop(plan.channel(end)) + channels.acrossY(route, upper);
  }

  private void conductor(Route route) {
    Joint joint = route.joint();
    List<Double> xy = new ArrayList<>();
    if (route.isAcross()) {
      double y = acrossY(route, true);
      xy.addAll(List.of(x(route.column()), barY(route.upper()), x(route.column()), y));
      xy.addAll(List.of(x(route.secondColumn()), y, x(route.secondColumn()), barY(route.lower())));
    } else {
      end(xy, route, true);
      List<Double> back = new ArrayList<>();
      end(back, route, false);
      for (int i = back.size() - 2; i >= 0; i -= 2) {
        xy.addAll(List.of(back.get(i), back.get(i + 1)));
      }
    }
    boolean same = joint.number() == Fabric.SAME_TERMINAL;
    Pen pen =
        new Pen()
            .path(
                same ? Type.THICK : Type.THIN,
                xy.stream().mapToDouble(Double::doubleValue).toArray());
    String name = same ? joint.a().terminal().toString() : "wire " + (joint.number() + 1);
    items.add(new Item(same ? Kind.BAR : Kind.WIRE, name, pen.shapes()));
    if (!same) {
      label(joint, route, name);
    }
  }

  private void end(List<Double> xy, Route route, boolean upper) {
    Port end = upper ? route.upper() : route.lower();
    if (plan.fabric().isBar(end)) {
      xy.addAll(List.of(x(route.column()), barY(end)));
      return;
    }
    xy.addAll(List.of(x(end), y(end)));
    if (channels.runsAcross(route, upper)) {
      double y = acrossY(route, upper);
      xy.addAll(List.of(x(end), y, x(route.column()), y));
    }
  }

  private void label(Joint joint, Route route, String name) {
    List<Integer> markers = notes.markers(joint);
    if (route.isBetweenBars(plan)) {
      double left = x(route.column()) + Extent.GAP;
      double y = acrossY(route, true) - 3;
      String text = String.join(" ", joint.lines());
      items.add(
          new Item(Kind.WIRE_TEXT, name, new Pen().text(left, y, text, Anchor.START).shapes()));
      markers(markers, left + extent.text(text) + 4, y);
      return;
    }
    channels
        .place(joint)
        .ifPresent(
            place -> {
              double left = x(place.column()) + Extent.GAP;
              double y =
                  spread.channelTop(place.channel())
                      + channels.zoneTop(place.channel(), place.upper())
                      + 10;
              for (String line : joint.lines()) {
                items.add(
                    new Item(
                        Kind.WIRE_TEXT,
                        name,
                        new Pen().text(left, y, line, Anchor.START).shapes()));
                y += Type.LEADING;
              }
              for (List<Integer> row : Extent.rows(markers)) {
                markers(row, left, y);
                y += Type.LEADING;
              }
            });
  }

  private void bars(Unit unit) {
    for (Port port : unit.ports()) {
      if (!plan.fabric().isBar(port)) {
        continue;
      }
      double y = barY(port);
      double own = x(port);
      double left = own;
      double right = own;
      Pen pen = new Pen().line(Type.THICK, own, y(port), own, y);
      for (Column column : channels.landings(port)) {
        left = Math.min(left, x(column));
        right = Math.max(right, x(column));
        pen.dot(x(column), y);
      }
      pen.line(Type.THICK, left, y, right, y);
      items.add(new Item(Kind.BAR, port.terminal().toString(), pen.shapes()));
    }
  }

  /** The places of everything that is drawn, once the sheets are known. */
  interface Places {
    /** Where a terminal is drawn, such as {@code /2.4}. */
    String of(Terminal terminal);

    /** Where the coil of a relay is drawn. */
    String coil(String part);

    /** Where a contact is drawn, or that it is free. */
    String contact(Terminal from, String pins);
  }
}
