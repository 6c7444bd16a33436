package org.coilwright.diagram;

import java.util.List;
import java.util.Set;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Wire;

/** An area laid out: where everything stands, before it is known on which sheet. */
final class AreaLayout {
  private final Fabric fabric;
  private final Plan plan;
  private final Channels channels;
  private final Tables tables;
  private final Spread spread;

  private AreaLayout(
      Area area,
      Set<Terminal> earlier,
      Netlist netlist,
      Conductors conductors,
      Extent extent,
      Notes notes) {
    List<Wire> wires = netlist.wires();
    this.fabric = new Fabric(area, wires, conductors::lines, earlier);
    this.plan = new Plan(fabric, Levels.of(fabric));
    new Placing(plan).place();
    new Routing(plan).route();
    this.tables = new Tables(fabric, netlist, extent);
    this.channels = new Channels(plan, extent, notes);
    this.spread = new Spread(plan, extent, channels, tables);
  }

  static AreaLayout of(
      Area area,
      Set<Terminal> earlier,
      Netlist netlist,
      Conductors conductors,
      Extent extent,
      Notes notes) {
    return new AreaLayout(area, earlier, netlist, conductors, extent, notes);
  }

  Area area() {
    return fabric.area();
  }

  Fabric fabric() {
    return fabric;
  }

  Plan plan() {
    return plan;
  }

  Channels channels() {
    return channels;
  }

  Tables tables() {
    return tables;
  }

  Spread spread() {
    return spread;
  }

  double width() {
    return spread.width();
  }

  double height() {
    return spread.height();
  }
}
