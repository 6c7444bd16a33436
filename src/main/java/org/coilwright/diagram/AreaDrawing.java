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
  private final List<Item> items = new ArrayList<>();

  private AreaDrawing(AreaLayout layout, Extent extent, Notes notes) {
    this.layout = layout;
    this.spread = layout.spread();
    this.channels = layout.channels();
    this.plan = layout.plan();
    this.extent = extent;
    this.notes = notes;
  }

  static List<Item> of(AreaLayout layout, Extent extent, Notes notes, Places places) {
    AreaDrawing drawing = new AreaDrawing(layout, extent, notes);
    drawing
        .plan
        .places()
        .keySet()
        .forEach(u -> drawing.items.addAll(UnitDrawing.of(u, layout, extent, notes, places)));
    drawing.plan.routes().values().forEach(drawing::conductor);
    drawing.plan.places().keySet().forEach(drawing::bars);
    return drawing.items;
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
      UnitDrawing.markers(items, extent, markers, left + extent.text(text) + 4, y);
      return;
    }
    layout
        .texts()
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
                UnitDrawing.markers(items, extent, row, left, y);
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
