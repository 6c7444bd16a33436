package org.coilwright.diagram;

import java.util.Set;
import java.util.stream.Collectors;
import org.coilwright.netlist.Netlist;

/** An area laid out: where everything stands, before it is known on which sheet. */
final class AreaLayout {
  private final Fabric fabric;
  private final Plan plan;
  private final ConductorTexts texts;
  private final Channels channels;
  private final Tables tables;
  private final Spread spread;

  private AreaLayout(Fabric fabric, Netlist netlist, Extent extent, Notes notes) {
    this.fabric = fabric;
    this.plan = new Plan(fabric, Levels.of(fabric));
    new Placing(plan).place();
    new Routing(plan).route();
    this.tables = new Tables(fabric, netlist, extent);
    this.texts = new ConductorTexts(plan, extent, notes);
    this.channels = new Channels(plan, texts);
    this.spread = new Spread(plan, extent, channels, texts, tables);
  }

  static AreaLayout of(Fabric fabric, Netlist netlist, Extent extent, Notes notes) {
    return new AreaLayout(fabric, netlist, extent, notes);
  }

  /** Numbers of the conductors that are drawn in it. */
  Set<Integer> drawn() {
    return fabric.joints().stream().map(Joint::number).collect(Collectors.toSet());
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

  ConductorTexts texts() {
    return texts;
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
