package org.coilwright.sizing;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.netlist.Method;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.sizing.Factor.Cause;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/**
 * What a copper wire may carry as it is laid. Metric sizes after IEC 60364-5-52, gauges after the
 * NEC with the limit of their terminals.
 */
public final class Ampacity {
  /** How wires inside an enclosure are counted: single cores in conduit or trunking. */
  public static final Method PANEL_METHOD = Method.B1;

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
   * @param core its metal, insulation and clamps
   */
  public record Laid(Method method, int loaded, double air, int circuits, Core core) {
    /** {@code B2, 3 loaded}. */
    String words() {
      return method.word() + ", " + loaded + " loaded";
    }
  }

  /** What it may carry, each factor apart. */
  public Found<Derated> of(ConductorSize size, Laid laid) {
    if (!laid.core().copper()) {
      return unknown(size, "The tables of currents read here are for copper.");
    }
    Optional<String> column = laid.core().column(size, tables);
    if (column.isEmpty()) {
      return unknown(
          size,
          "No table read here gives its current in %s.".formatted(laid.core().words(size, tables)));
    }
    return size.awg().isPresent()
        ? gauge(size, laid, column.get())
        : metric(size, laid, column.get());
  }

  private Found<Derated> metric(ConductorSize size, Laid laid, String column) {
    String method = (laid.method() == Method.PANEL ? PANEL_METHOD : laid.method()).word();
    Optional<Cited<Double>> base =
        tables
            .lookup(
                "ampacity-iec-%s-%s-loaded".formatted(column, laid.loaded()),
                Map.of(),
                size.mm2(),
                method)
            .or(() -> thin(size));
    if (base.isEmpty()) {
      return unknown(size, "No table gives %s in method %s.".formatted(of(size), laid.words()));
    }
    Optional<Cited<Double>> air = tables.lookup("ambient-air-iec", Map.of(), laid.air(), column);
    Optional<Cited<Double>> group =
        tables.lookup("grouping-iec", Map.of("arrangement", "bunched"), laid.circuits(), "factor");
    Found<Derated> derated = derated(size, laid, base.get(), air, group);
    double clamps = laid.core().clamps().orElse(70);
    if (laid.core().celsius(size, tables).value() <= clamps) {
      return derated;
    }
    // a core warmer than its clamps are made for: no more than what warms it to 70 °C
    Optional<Cited<Double>> cooler =
        tables
            .lookup(
                "ampacity-iec-pvc-%s-loaded".formatted(laid.loaded()), Map.of(), size.mm2(), method)
            .map(c -> new Cited<>(c.value(), c.source(), c.place(), held(c)));
    return clamped(derated, cooler, 70, laid.core().clamps());
  }

  private static Standing held(Cited<Double> column) {
    return column.standing().weaker(Standing.COMMON_PRACTICE);
  }

  /** Thinner than the tables of fixed wiring: what an electrician's table gives for it. */
  private Optional<Cited<Double>> thin(ConductorSize size) {
    return size.mm2() < 1.5
        ? tables.lookup("control-wire-current", Map.of(), size.mm2(), "amps")
        : Optional.empty();
  }

  /**
   * What a gauge may carry before the factors of air and of other circuits, held to its terminals:
   * 125 % of a continuous load may come up to it. Empty for metric sizes.
   */
  public Optional<Cited<Double>> beforeFactors(ConductorSize size, Core core) {
    if (size.awg().isEmpty()) {
      return Optional.empty();
    }
    String awg = of(size).replace(" AWG", "");
    double listed = core.clamps().orElse(60);
    int celsius = listed >= 90 ? 90 : listed >= 75 ? 75 : 60;
    return core.column(size, tables)
        .flatMap(column -> tables.lookup("ampacity-nec", Map.of("awg", awg), column))
        .map(
            base ->
                tables
                    .lookup("ampacity-nec", Map.of("awg", awg), "c" + celsius)
                    .filter(clamp -> clamp.value() < base.value())
                    .orElse(base));
  }

  private Found<Derated> gauge(ConductorSize size, Laid laid, String column) {
    String awg = of(size).replace(" AWG", "");
    Optional<Cited<Double>> base =
        tables
            .lookup("ampacity-nec", Map.of("awg", awg), column)
            .or(() -> tables.lookup("control-wire-current-awg", Map.of("awg", awg), "amps"));
    if (base.isEmpty()) {
      return unknown(size, "The ampacity table read here has no %s.".formatted(of(size)));
    }
    Optional<Cited<Double>> air = tables.lookup("ambient-air-nec", Map.of(), laid.air(), column);
    Optional<Cited<Double>> group =
        tables.lookup(
            "more-conductors-nec", Map.of(), laid.circuits() * (double) laid.loaded(), "factor");
    Found<Derated> derated = derated(size, laid, base.get(), air, group);
    double listed = laid.core().clamps().orElse(60);
    int celsius = listed >= 90 ? 90 : listed >= 75 ? 75 : 60;
    Optional<Cited<Double>> clamp =
        tables.lookup("ampacity-nec", Map.of("awg", awg), "c" + celsius);
    return clamped(derated, clamp, celsius, laid.core().clamps());
  }

  /** Never more than the column of the clamps: warm air does not lower what a clamp stands. */
  private static Found<Derated> clamped(
      Found<Derated> derated, Optional<Cited<Double>> clamp, int celsius, OptionalDouble listed) {
    if (derated instanceof Found.Known<Derated> known
        && clamp.isPresent()
        && known.value().amps() > clamp.get().value()) {
      double share = clamp.get().value() / known.value().amps();
      List<Factor> factors = new ArrayList<>(known.value().factors());
      factors.add(
          new Factor(
              Cause.TERMINALS,
              clamp.get().map(any -> share),
              "held to the %s °C column for the terminals%s, %s"
                  .formatted(
                      celsius,
                      listed.isEmpty() ? ", taken" : "",
                      Printed.amps(clamp.get().value()))));
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
    Cited<Double> hottest = laid.core().celsius(size, tables);
    if (air.isEmpty() && laid.air() >= hottest.value()) {
      return new Found.Known<>(
          new Derated(
              base.value(),
              List.of(
                  new Factor(
                      Cause.AIR,
                      hottest.map(any -> 0.0),
                      "air at %s, and its insulation stands %s"
                          .formatted(
                              Printed.of(laid.air(), Dimension.TEMPERATURE),
                              Printed.of(hottest.value(), Dimension.TEMPERATURE)))),
              List.of(base)));
    }
    if (air.isEmpty()) {
      return unknown(
          size,
          "The table gives no current for its insulation in air at %s."
              .formatted(Printed.of(laid.air(), Dimension.TEMPERATURE)));
    }
    if (group.isEmpty()) {
      return unknown(size, "No table gives %s circuits together.".formatted(laid.circuits()));
    }
    List<Factor> factors = new ArrayList<>();
    // cooler air than the table's gains nothing: it may be warmer one summer
    if (air.get().value() < 1) {
      factors.add(
          new Factor(
              Cause.AIR, air.get(), "air at " + Printed.of(laid.air(), Dimension.TEMPERATURE)));
    }
    if (group.get().value() < 1) {
      factors.add(
          new Factor(Cause.CIRCUITS_TOGETHER, group.get(), laid.circuits() + " circuits together"));
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
