// Over 250 lines: every band is worked out by the same figures.
package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.coilwright.checklist.Expected.Band;
import org.coilwright.checklist.Expected.Winding;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Run;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.rule.Basis;
import org.coilwright.solve.Span;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.ConductorTable;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/**
 * Expected readings of cold parts: coils, conductors, elements. Every figure comes from the netlist
 * or from a cited table.
 */
final class Bands {
  /** The table by temperature ends at 40 °C. */
  private static final int MOST_TENS = 4;

  private final Tables tables;
  private final ConductorTable conductors;
  private final Texts texts;

  Bands(Tables tables, Texts texts) {
    this.tables = tables;
    this.texts = texts;
    this.conductors = new ConductorTable(tables);
  }

  /** A band and why. */
  record Reasoned(Band band, Grounds grounds) {}

  /** A circuit that was built otherwise, solved in the air of the one that was drawn. */
  Study study(Netlist netlist, Circuit drawn) {
    Circuit built = Circuit.of(netlist);
    return Study.of(drawn.unwrittenAir().map(built::in).orElse(built), tables);
  }

  Cited<Double> figure(String name) {
    return tables.figure(name);
  }

  Optional<Cited<Double>> lookup(String table, Map<String, String> where, String column) {
    return tables.lookup(table, where, column);
  }

  /** Follows from a publication as a whole. */
  Grounds published(String how, String source) {
    return Reasons.of(how, new Basis(List.of(tables.source(source).cite()), Standing.PUBLISHED));
  }

  /** Factor from a coil's stated resistance, or copper at 20 °C, to a room temperature. */
  private double copper(double celsius) {
    return winding(1, 1).factor(celsius);
  }

  private Winding winding(double low, double high) {
    return new Winding(
        low,
        high,
        figure("coil.copper-constant").value(),
        figure("coil.reference-temperature").value());
  }

  /** From the coldest to the warmest room, and narrower where the temperature is known. */
  private Band coilBand(double low, double high) {
    return Band.between(low * cold(), high * warm(), "Ω").of(winding(low, high));
  }

  private double cold() {
    return copper(figure("checklist.room-low").value());
  }

  private double warm() {
    return copper(figure("checklist.room-high").value());
  }

  private String room() {
    return texts.of(
        "how.room",
        printed(figure("checklist.room-low").value(), Dimension.TEMPERATURE),
        printed(figure("checklist.room-high").value(), Dimension.TEMPERATURE));
  }

  private String printed(double value, Dimension dimension) {
    return texts.figure(Printed.given(value, dimension));
  }

  /** Resistance of a coil that has not been on; empty if the netlist lets nobody compute it. */
  Optional<Reasoned> coil(Part.CoilSpec spec) {
    Optional<Quantity> stated = spec.resistance().map(r -> r.value());
    if (stated.isPresent()) {
      return Optional.of(statedCoil(stated.get()));
    }
    if (spec.pickUp().isPresent()) {
      return Optional.of(alternatingCoil(spec, spec.pickUp().get().value()));
    }
    return spec.power().map(p -> directCoil(spec, p.value()));
  }

  /**
   * The band of a coil at the temperatures a panel may have on the day: {@code 0 °C 795 … 971, 10
   * °C …}; empty for an AC coil, whose band is wider than what temperature does to it.
   */
  Optional<String> coilByTemperature(Part.CoilSpec spec) {
    if (spec.resistance().isEmpty() && spec.pickUp().isPresent()) {
      return Optional.empty();
    }
    return coil(spec)
        .map(
            reasoned ->
                IntStream.rangeClosed(0, MOST_TENS)
                    .map(tens -> 10 * tens)
                    .mapToObj(
                        celsius ->
                            texts.of("coil.at", celsius, reasoned.band().at(celsius).text(texts)))
                    .collect(Collectors.joining(", ")));
  }

  private Reasoned statedCoil(Quantity ohms) {
    Cited<Double> tolerance = figure("coil.resistance-tolerance");
    double low = ohms.isExact() ? ohms.nominal() * (1 - tolerance.value()) : ohms.low();
    double high = ohms.isExact() ? ohms.nominal() * (1 + tolerance.value()) : ohms.high();
    String how =
        texts.of(
            "how.stated-coil",
            texts.figure(Printed.of(ohms))
                + (ohms.isExact() ? " ± " + printed(tolerance.value(), Dimension.RATIO) : ""),
            room());
    return reasoned(
        coilBand(low, high),
        how,
        figure("coil.copper-constant"),
        figure("checklist.room-high"),
        tolerance);
  }

  private Reasoned directCoil(Part.CoilSpec spec, Quantity watts) {
    Cited<Double> tolerance = figure("coil.resistance-tolerance");
    double volts = spec.voltage().value().nominal();
    double ohms = volts * volts / watts.nominal();
    return reasoned(
        coilBand(ohms * (1 - tolerance.value()), ohms * (1 + tolerance.value())),
        texts.of("how.coil-power", room()),
        figure("coil.copper-constant"),
        figure("checklist.room-high"),
        tolerance);
  }

  private Reasoned alternatingCoil(Part.CoilSpec spec, Quantity pickUp) {
    double volts = spec.voltage().value().nominal();
    double impedance = volts * volts / pickUp.nominal();
    Cited<Double> share = figure("checklist.ac-coil-low-share");
    return reasoned(
        Band.between(share.value() * impedance, impedance, "Ω"),
        texts.of("how.ac-coil", texts.figure(Printed.of(impedance, Dimension.RESISTANCE))),
        share,
        figure("coil.pick-up-power-factor"));
  }

  /** Resistance of conductors in series, read cold; empty if a length or size is missing. */
  Optional<Reasoned> series(List<Branch.Conductor> path) {
    double largest = 0;
    double metres = 0;
    List<Cited<Double>> used = new ArrayList<>();
    for (Branch.Conductor conductor : path) {
      Optional<Cited<Double>> perKm =
          conductor.size().flatMap(size -> conductors.ohmPerKm(size, flexible(conductor)));
      if (perKm.isEmpty() || conductor.length().isEmpty()) {
        return Optional.empty();
      }
      used.add(perKm.get());
      metres += conductor.length().getAsDouble();
      largest += perKm.get().value() * conductor.length().getAsDouble() / 1000;
    }
    Cited<Double> share = figure("checklist.conductor-low-share");
    Cited<Double> probes = figure("checklist.probe-ohms");
    used.add(share);
    used.add(probes);
    return Optional.of(
        new Reasoned(
            Band.between(largest * share.value() * cold(), largest * warm() + probes.value(), "Ω"),
            Reasons.of(
                texts.of(
                    "how.copper",
                    printed(metres, Dimension.LENGTH),
                    texts.figure(Printed.of(largest, Dimension.RESISTANCE)),
                    room()),
                Basis.of(used))));
  }

  /** What is read of ohms within limits: probes and clamps add to it, and take its least digits. */
  Band read(Span ohms) {
    double probes = figure("checklist.probe-ohms").value();
    return Band.between(ohms.low() < probes ? 0 : ohms.low(), ohms.high() + probes, "Ω");
  }

  private static boolean flexible(Branch.Conductor conductor) {
    return conductor.run().flatMap(Run::flexible).map(f -> f.value()).orElse(false);
  }

  /** Resistance of a heating element between two of its pins, read cold. */
  Reasoned element(double hotOhms) {
    Cited<Double> most = figure("poles.heater-power-high");
    Cited<Double> least = figure("poles.heater-power-low");
    Cited<Double> hot = figure("checklist.element-hot-factor");
    return reasoned(
        Band.between(hotOhms / most.value() / hot.value(), hotOhms / least.value(), "Ω"),
        texts.of(
            "how.element",
            texts.figure(Printed.of(hotOhms, Dimension.RESISTANCE)),
            printed(least.value(), Dimension.RATIO),
            printed(most.value(), Dimension.RATIO)),
        most,
        hot);
  }

  static Reasoned reasoned(Band band, String how, Cited<?>... figures) {
    return new Reasoned(band, Reasons.of(how, figures));
  }

  /** A limit in the unit that a person reads it in, such as MΩ for Ω. */
  Reasoned atLeast(String name, double scale, String unit, String how) {
    Cited<Double> limit = figure(name);
    return reasoned(Band.atLeast(limit.value() / scale, unit), how, limit);
  }

  /** What a conductor that is off may still show. */
  Reasoned off(double volts, String unit) {
    Cited<Double> share = figure("checklist.off-share");
    return reasoned(
        Band.atMost(share.value() * volts, unit),
        texts.of(
            "how.off", printed(share.value(), Dimension.RATIO), printed(volts, Dimension.VOLTAGE)),
        share);
  }
}
