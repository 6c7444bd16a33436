package org.coilwright.sizing;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/**
 * What a copper wire may carry as it is laid. Metric sizes after IEC 60364-5-52 with PVC
 * insulation, gauges after the NEC with 75 °C insulation and 60 °C terminals.
 */
public final class Ampacity {
  /** How wires inside an enclosure are counted: single cores in conduit or trunking. */
  public static final String PANEL_METHOD = "B1";

  private final Tables tables;

  public Ampacity(Tables tables) {
    this.tables = tables;
  }

  /**
   * How a wire is laid.
   *
   * @param method reference method, {@code panel} for wiring inside an enclosure
   * @param loaded conductors of the circuit that carry load current, 2 or 3
   * @param air °C
   * @param circuits loaded circuits laid together, itself included
   */
  public record Laid(String method, int loaded, double air, int circuits) {
    /** {@code B2, 3 loaded}. */
    String words() {
      return method + ", " + loaded + " loaded";
    }
  }

  /** What it may carry, each factor apart. */
  public Found<Derated> of(ConductorSize size, Laid laid) {
    return size.awg().isPresent() ? gauge(size, laid) : metric(size, laid);
  }

  private Found<Derated> metric(ConductorSize size, Laid laid) {
    String method = laid.method().equals("panel") ? PANEL_METHOD : laid.method();
    Optional<Cited<Double>> base =
        tables
            .lookup(
                "ampacity-iec-pvc-%d-loaded".formatted(laid.loaded()), Map.of(), size.mm2(), method)
            .or(() -> thin(size));
    if (base.isEmpty()) {
      return unknown(size, "No table gives %s in method %s.".formatted(of(size), laid.words()));
    }
    Optional<Cited<Double>> air = tables.lookup("ambient-air-iec", Map.of(), laid.air(), "pvc");
    Optional<Cited<Double>> group =
        tables.lookup("grouping-iec", Map.of("arrangement", "bunched"), laid.circuits(), "factor");
    return derated(size, laid, base.get(), air, group);
  }

  /** Thinner than the tables of fixed wiring: what an electrician's table gives for it. */
  private Optional<Cited<Double>> thin(ConductorSize size) {
    return size.mm2() < 1.5
        ? tables.lookup("control-wire-current", Map.of(), size.mm2(), "amps")
        : Optional.empty();
  }

  private Found<Derated> gauge(ConductorSize size, Laid laid) {
    String awg = of(size).replace(" AWG", "");
    Optional<Cited<Double>> base =
        tables
            .lookup("ampacity-nec", Map.of("awg", awg), "c75")
            .or(() -> tables.lookup("control-wire-current-awg", Map.of("awg", awg), "amps"));
    if (base.isEmpty()) {
      return unknown(size, "The ampacity table read here has no %s.".formatted(of(size)));
    }
    Optional<Cited<Double>> air = tables.lookup("ambient-air-nec", Map.of(), laid.air(), "c75");
    Optional<Cited<Double>> group =
        tables.lookup(
            "more-conductors-nec", Map.of(), laid.circuits() * (double) laid.loaded(), "factor");
    Found<Derated> derated = derated(size, laid, base.get(), air, group);
    Optional<Cited<Double>> clamp = tables.lookup("ampacity-nec", Map.of("awg", awg), "c60");
    if (derated instanceof Found.Known<Derated> known
        && clamp.isPresent()
        && known.value().amps() > clamp.get().value()) {
      // warm air does not lower what the clamp stands: the column is its limit as printed
      double share = clamp.get().value() / known.value().amps();
      List<Factor> factors = new ArrayList<>(known.value().factors());
      factors.add(
          new Factor(
              clamp.get().map(any -> share),
              "held to the 60 °C column for the terminals, " + Printed.amps(clamp.get().value())));
      return new Found.Known<>(
          new Derated(known.value().rated(), List.copyOf(factors), known.value().cited()));
    }
    return derated;
  }

  private Found<Derated> derated(
      ConductorSize size,
      Laid laid,
      Cited<Double> base,
      Optional<Cited<Double>> air,
      Optional<Cited<Double>> group) {
    if (air.isEmpty()) {
      return unknown(
          size,
          "The table gives no current for its insulation in air at %s."
              .formatted(Printed.of(laid.air(), Dimension.TEMPERATURE)));
    }
    if (group.isEmpty()) {
      return unknown(size, "No table gives %d circuits together.".formatted(laid.circuits()));
    }
    List<Factor> factors = new ArrayList<>();
    // cooler air than the table's gains nothing: it may be warmer one summer
    if (air.get().value() < 1) {
      factors.add(new Factor(air.get(), "air at " + Printed.of(laid.air(), Dimension.TEMPERATURE)));
    }
    if (group.get().value() < 1) {
      factors.add(new Factor(group.get(), laid.circuits() + " circuits together"));
    }
    return new Found.Known<>(new Derated(base.value(), List.copyOf(factors), List.of(base)));
  }

  private static Found<Derated> unknown(ConductorSize size, String why) {
    return new Found.Unknown<>("tabulated current of %s as laid".formatted(of(size)), why);
  }

  private static String of(ConductorSize size) {
    return Printed.of(size);
  }
}
