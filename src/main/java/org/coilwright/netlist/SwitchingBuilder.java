package org.coilwright.netlist;

import org.coilwright.netlist.Switching.Battery;
import org.coilwright.netlist.Switching.Plant;
import org.coilwright.netlist.Switching.Start;
import org.coilwright.netlist.Switching.Stop;
import org.coilwright.netlist.Switching.Water;
import org.coilwright.netlist.Value.Section;

/** The settings and the plant they act on. */
final class SwitchingBuilder {
  private SwitchingBuilder() {}

  static Switching switching(Section section) {
    return new Switching(
        section.mark(),
        section.text("output"),
        section
            .section("start")
            .map(s -> new Start(s.mark(), s.quantity("export-above"), s.quantity("for"))),
        section
            .section("stop")
            .map(
                s ->
                    new Stop(
                        s.mark(),
                        s.quantity("import-above"),
                        s.quantity("for"),
                        s.quantity("battery-below"))),
        section.quantity("shortest-run"),
        section.quantity("longest-per-day"),
        section.words("always-on"),
        section.section("plant").map(SwitchingBuilder::plant),
        section
            .section("water")
            .map(
                w ->
                    new Water(
                        w.mark(), w.quantity("litres"), w.quantity("from"), w.quantity("to"))));
  }

  private static Plant plant(Section section) {
    return new Plant(
        section.mark(),
        section.quantity("pv-peak"),
        section.quantity("base-load"),
        section.quantity("largest-step"),
        section
            .section("battery")
            .map(
                b ->
                    new Battery(
                        b.mark(),
                        b.quantity("capacity"),
                        b.quantity("discharge"),
                        b.quantity("charge"),
                        b.quantity("settles-in"),
                        b.quantity("floor"),
                        b.text("settles"))));
  }
}
