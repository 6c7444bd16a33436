package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.checklist.Bands.Reasoned;
import org.coilwright.checklist.Expected.Band;
import org.coilwright.netlist.Part;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.table.Cited;

/** What is measured once more while the circuit's own source feeds it and the mains are off. */
final class IslandTopic {
  private static final double MILLI = 1000;

  private final Anatomy anatomy;
  private final Bands bands;
  private final Texts texts;

  IslandTopic(Anatomy anatomy, Bands bands, Texts texts) {
    this.anatomy = anatomy;
    this.bands = bands;
    this.texts = texts;
  }

  /** Nothing for a circuit that is stated to have no such source. */
  List<Topic> topics() {
    if (!Condition.ISLAND.holds(anatomy)) {
      return List.of();
    }
    boolean known = anatomy.netlist().site().island().isPresent();
    return List.of(
        Topic.of(
            "island",
            Section.Stage.MAINS,
            texts.of("section.island"),
            texts.of(known ? "begin.island" : "begin.mains-failed"),
            known ? rows() : unknown()));
  }

  /** One reading tells whether anything feeds it then. */
  private List<Row> unknown() {
    List<Row> rows = new ArrayList<>();
    for (Part.Mains mains : anatomy.parts(Part.Mains.class)) {
      String line = mains.pins().get(0);
      rows.add(off("island-none", Names.of(mains.name(), "without-mains"), mains, line));
    }
    return rows;
  }

  private List<Row> rows() {
    List<Row> rows = new ArrayList<>();
    for (Part.Mains mains : anatomy.parts(Part.Mains.class)) {
      rows.add(
          off("island-neutral", Names.of(mains.name(), "island-neutral-to-earth"), mains, "N"));
    }
    for (Part.Protective device : anatomy.parts(Part.Protective.class)) {
      if (device.isRcd() && device.trip().isPresent()) {
        rows.add(trips(device, device.trip().get().value().nominal()));
        if (!anatomy.isNec()) {
          rows.add(loop(device, device.trip().get().value().high()));
        }
      }
    }
    return rows;
  }

  private Row off(String kind, String name, Part.Mains mains, String pin) {
    double volts = anatomy.mains().map(Volts::toEarth).orElse(0.0);
    Reasoned off = bands.off(volts, "V AC");
    return Row.of(texts, kind, name, off.band(), off.grounds(), mains.name(), pin).live(true);
  }

  private Row trips(Part.Protective device, double amps) {
    Cited<Double> rated = bands.figure("checklist.rcd-time-rated");
    return Row.of(
            texts,
            "island-trip",
            Names.of(device.name(), "island-trip"),
            Band.atMost(rated.value() * MILLI, "ms"),
            Reasons.of(texts.of("how.rcd-rated"), rated),
            device.name(),
            texts.figure(Printed.given(amps, Dimension.CURRENT)),
            device.name() + "." + device.poles().get(0).to())
        .live(true);
  }

  private Row loop(Part.Protective device, double amps) {
    Cited<Double> touch = bands.figure("sizing.touch-voltage");
    return Row.of(
            texts,
            "island-loop",
            Names.of(device.name(), "island-loop-impedance"),
            Band.atMost(touch.value() / amps, "Ω"),
            Reasons.of(
                texts.of(
                    "how.island-loop",
                    texts.figure(Printed.given(touch.value(), Dimension.VOLTAGE)),
                    texts.figure(Printed.given(amps, Dimension.CURRENT))),
                touch),
            device.name(),
            device.name() + "." + device.poles().get(0).to())
        .live(true);
  }
}
