package org.coilwright.sizing;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.table.Cited;

/** The thinnest wire that carries what the device lets through, with what it loses and stands. */
final class WireChoice extends Working {
  private static final List<Double> METRIC = List.of(1.5, 2.5, 4.0, 6.0, 10.0, 16.0, 25.0, 35.0);
  private static final List<Integer> GAUGES = List.of(14, 12, 10, 8, 6, 4, 3, 2, 1);

  private final Question q;

  WireChoice(Working begun, Question q) {
    super(begun);
    this.q = q;
  }

  void wire(double device) {
    Ampacity ampacity = new Ampacity(tables);
    Ampacity.Laid laid =
        new Ampacity.Laid(q.wire().method(), q.load().wires(), q.wire().air(), 1, q.wire().core());
    List<ConductorSize> sizes =
        q.supply().isNec()
            ? GAUGES.stream().map(ConductorSize::ofAwg).toList()
            : METRIC.stream().map(ConductorSize::ofMm2).toList();
    String last = "";
    String thinner = "";
    for (ConductorSize size : sizes) {
      Found<Derated> found = ampacity.of(size, laid);
      if (found instanceof Found.Unknown<Derated> unknown) {
        last = unknown.why();
        continue;
      }
      Derated may = found.known().orElseThrow();
      boolean carries =
          q.supply().isNec()
              ? Series.largestFor(size, may.amps(), tables)
                      .filter(l -> l.value() >= device)
                      .isPresent()
                  && !Comparison.fallsShort(
                      may.amps(),
                      q.load().nominal() * tables.figure("sizing.continuous-load").value())
              : !Comparison.fallsShort(may.amps(), Math.max(device, q.load().worst()));
      Optional<Drop> drop = drop(size);
      boolean near = drop.isEmpty() || !Comparison.exceeds(drop.get().volts, drop.get().limit);
      Optional<Stress> stress = stress(size, device);
      boolean stands = stress.isEmpty() || !stress.get().tooMuch();
      if (carries && near && stands) {
        cited.addAll(may.basis());
        add(
            "wire",
            "wire",
            "%s copper, %s, method %s: may carry %s%s"
                .formatted(
                    Printed.of(size),
                    q.wire().core().words(size, tables),
                    q.wire().method().word(),
                    may.words(),
                    thinner.isEmpty() ? "" : "; a size thinner, " + thinner),
            size.mm2(),
            "mm²");
        drop.ifPresentOrElse(
            this::tell, () -> add("drop", "voltage drop", "not worked out: give --length"));
        shortCircuit(size, stress);
        new EarthFault(this, q).judge(size, device);
        return;
      }
      last =
          !carries
              ? "it carries too little"
              : near ? "it does not stand a short-circuit" : "the voltage drop is too large";
      thinner = last;
    }
    doesNotFit();
    add("wire", "wire", "no tabulated size fits: " + last);
  }

  private record Drop(double volts, double limit, String words, List<Cited<?>> cited) {}

  private Optional<Drop> drop(ConductorSize size) {
    if (q.wire().metres().isEmpty()) {
      return Optional.empty();
    }
    Cited<Double> warm = q.wire().core().celsius(size, tables);
    return WireOhms.perMetre(size, warm.value(), tables)
        .map(
            perMetre -> {
              double ohms = perMetre.value() * q.wire().metres().getAsDouble();
              double lost = q.load().nominal() * ohms * WireOhms.wires(q.load().wires());
              Cited<Double> limit =
                  tables
                      .lookup(
                          "voltage-drop-limits",
                          Map.of("supply", q.supply().isNec() ? "nec-branch" : "public"),
                          "other")
                      .orElseThrow();
              return new Drop(
                  lost,
                  limit.value() * q.load().volts(),
                  "%s (%s) over %s: %s × %s × %s at %s; at most %s"
                      .formatted(
                          Printed.volts(lost),
                          Printed.percent(lost / q.load().volts()),
                          Printed.of(q.wire().metres().getAsDouble(), Dimension.LENGTH),
                          q.load().wires() == 3 ? "√3" : "2",
                          amps(q.load().nominal()),
                          Printed.of(ohms, Dimension.RESISTANCE),
                          Printed.of(warm.value(), Dimension.TEMPERATURE),
                          Printed.percent(limit.value())),
                  List.of(perMetre, limit));
            });
  }

  private void tell(Drop drop) {
    cited.addAll(drop.cited);
    add("drop", "voltage drop", drop.words, drop.volts, "V");
  }

  /**
   * What a short-circuit does to the wire.
   *
   * @param through A²s, without limiting or, if {@code limited}, as a table gives it
   */
  private record Stress(
      double stands,
      double through,
      boolean limited,
      String words,
      Cited<Double> k,
      List<Cited<?>> cited) {
    boolean enough() {
      return !Comparison.exceeds(through, stands);
    }

    /** Without a figure for what the breaker lets through the matter is open. */
    boolean tooMuch() {
      return limited && !enough();
    }
  }

  private Optional<Stress> stress(ConductorSize size, double device) {
    Optional<Cited<Double>> factor = q.wire().core().shortCircuitFactor(size, tables);
    if (q.supply().faultAmps().isEmpty() || factor.isEmpty()) {
      return Optional.empty();
    }
    Cited<Double> k = factor.get();
    Cited<Double> time = tables.figure("sizing.magnetic-time");
    double fault = q.supply().faultAmps().getAsDouble();
    double stands = ShortCircuit.stands(k.value(), size.mm2());
    double through = fault * fault * time.value();
    Stress whole =
        new Stress(
            stands, through, false, "%s for 0.1 s".formatted(amps(fault)), k, List.of(k, time));
    if (whole.enough() || device > 32 || q.supply().isNec()) {
      return Optional.of(whole);
    }
    return Optional.of(
        tables
            .lookup(
                "let-through",
                Map.of("curve", "B", "ratings", device <= 16 ? "up-to-16" : "up-to-32"),
                fault,
                "energy")
            .map(
                limited ->
                    new Stress(
                        stands,
                        limited.value(),
                        true,
                        "type B, energy limiting class 3, at " + amps(fault),
                        k,
                        List.of(k, time, limited)))
            .orElse(whole));
  }

  private void shortCircuit(ConductorSize size, Optional<Stress> found) {
    if (q.supply().faultAmps().isEmpty()) {
      add("short-circuit", "short-circuit", "not checked: give --fault-current");
      return;
    }
    if (found.isEmpty()) {
      add(
          "short-circuit",
          "short-circuit",
          "could not be checked: no table gives k for " + q.wire().core().words(size, tables));
      return;
    }
    Stress stress = found.get();
    cited.addAll(stress.cited);
    add(
        "short-circuit",
        "short-circuit",
        "%s%s: %s; the wire stands %s (%s² × %s²)%s"
            .formatted(
                stress.enough() ? "" : "open: without limiting ",
                stress.words,
                energy(stress.through),
                energy(stress.stands),
                plain(stress.k.value()),
                plain(size.mm2()),
                stress.enough() ? "" : "; ask the breaker's maker for its let-through energy"),
        stress.through,
        "A²s");
  }

  private static String energy(double a2s) {
    return String.format(Locale.ROOT, "%,d A²s", Math.round(a2s)).replace(',', ' ');
  }
}
