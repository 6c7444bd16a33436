package org.coilwright.sizing;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.sizing.Choice.Line;
import org.coilwright.solve.CopperLaw;
import org.coilwright.table.Cited;
import org.coilwright.table.CitedTable;
import org.coilwright.table.ConductorTable;
import org.coilwright.table.Tables;

/** Works a {@link Question} out: contactor, device, wire, coil. Never past the end of a table. */
public final class Chooser {
  private static final List<Double> METRIC = List.of(1.5, 2.5, 4.0, 6.0, 10.0, 16.0, 25.0, 35.0);
  private static final List<Integer> GAUGES = List.of(14, 12, 10, 8, 6, 4);

  private final Tables tables;
  private final List<Line> lines = new ArrayList<>();
  private final List<Cited<?>> cited = new ArrayList<>();
  private boolean fits = true;

  private Chooser(Tables tables) {
    this.tables = tables;
  }

  /** The answer. */
  public static Choice answer(Question question, Tables tables) {
    return new Chooser(tables).work(question);
  }

  private Choice work(Question q) {
    cited.addAll(q.basis());
    add(
        "current",
        "current",
        "%s at %s;  %s %s"
            .formatted(
                amps(q.nominal()), Printed.volts(q.volts()), amps(q.worst()), q.worstWords()),
        q.worst(),
        "A");
    Found<Need> found = need(q);
    if (found instanceof Found.Unknown<Need> unknown) {
      fits = false;
      add(
          "needs",
          "needs",
          "could not be worked out for %s. %s".formatted(unknown.missing(), unknown.why()));
      return done(q);
    }
    Need need = found.known().orElseThrow();
    cited.addAll(need.cited);
    add("needs", "needs in free air", need.words, need.amps, "A");
    Optional<Double> chosen = contactor(need);
    chosen.ifPresent(r -> life(q, r));
    add(
        "poles",
        "poles",
        "%d, so that nothing stays on the load".formatted(q.poles()),
        q.poles(),
        "");
    smaller(q, chosen);
    Optional<Cited<Double>> device = device(q, chosen);
    device.ifPresent(d -> wire(q, d.value()));
    chosen.ifPresent(r -> coil(q, r));
    return done(q);
  }

  private Choice done(Question q) {
    return new Choice(q, fits, List.copyOf(lines), List.copyOf(cited));
  }

  private record Need(double amps, String words, String category, List<Cited<?>> cited) {}

  /** The rating that the contactor must have. */
  private Found<Need> need(Question q) {
    Found<List<Factor>> factors =
        new ContactConditions(q.air(), q.ratedAir(), q.closeMounted(), q.altitude(), q.hertz(), 1)
            .factors(tables);
    if (factors instanceof Found.Unknown<List<Factor>> u) {
      return new Found.Unknown<>(u.missing(), u.why());
    }
    List<Factor> all = new ArrayList<>(factors.known().orElse(List.of()));
    if (q.duty().equals("uninterrupted")) {
      tables
          .lookup("contact-duty", Map.of("duty", q.duty()), "factor")
          .ifPresent(f -> all.add(new Factor(f, "uninterrupted duty")));
    }
    List<CitedTable.Row> covering =
        tables.table("load-category").rows().stream()
            .filter(r -> r.word("load").map(Cited::value).equals(Optional.of(q.kind())))
            .toList();
    if (covering.isEmpty()) {
      return new Found.Unknown<>("a load of kind " + q.kind(), "No category is known for it.");
    }
    Cited<String> category = covering.get(0).word("category").orElseThrow();
    String inrush = covering.get(0).word("inrush").map(Cited::value).orElse("");
    Cited<Double> first =
        inrush.equals("element")
            ? tables.figure("sizing.cold-element")
            : tables.lookup("inrush", Map.of("load", inrush), "high").orElseThrow();
    Cited<Double> makes =
        tables
            .lookup(
                "power-contact-categories",
                Map.of("category", category.value(), "rating", ratingWord(category.value())),
                "make")
            .orElseThrow();
    double carries = q.worst();
    StringBuilder words = new StringBuilder(amps(q.worst()));
    List<Cited<?>> from = new ArrayList<>(List.of(category, first, makes));
    for (Factor factor : all) {
      carries /= factor.value().value();
      words.append(" ÷ ").append(factor.words());
      from.add(factor.value());
    }
    if (!all.isEmpty()) {
      words.append(" = ").append(amps(carries));
    }
    words.append(", category ").append(category.value());
    double making = q.worst() * first.value() / makes.value();
    words.append(
        "; to make %s (%s × %s) it needs %s (÷ %s)"
            .formatted(
                amps(q.worst() * first.value()),
                amps(q.worst()),
                plain(first.value()),
                amps(making),
                plain(makes.value())));
    return new Found.Known<>(
        new Need(Math.max(carries, making), words.toString(), category.value(), from));
  }

  private static String ratingWord(String category) {
    return switch (category) {
      case "AC-3", "AC-4", "AC-6a" -> "up-to-100";
      default -> "all";
    };
  }

  private Optional<Double> contactor(Need need) {
    List<Cited<Double>> series = series("contactor-ratings");
    List<Cited<Double>> enough =
        series.stream().filter(r -> r.value() >= need.amps * (1 - 1e-9)).toList();
    if (enough.isEmpty()) {
      fits = false;
      Cited<Double> nearest = series.get(series.size() - 1);
      cited.add(nearest);
      add(
          "choose",
          "choose",
          "nothing in this series fits; the nearest is %s, too small by %s"
              .formatted(amps(nearest.value()), amps(need.amps - nearest.value())));
      return Optional.empty();
    }
    Cited<Double> first = enough.get(0);
    cited.add(first);
    String next =
        enough.size() > 1
            ? ", or %s (%s)"
                .formatted(amps(enough.get(1).value()), margin(enough.get(1).value(), need.amps))
            : "";
    add(
        "choose",
        "choose",
        "%s %s (%s)%s"
            .formatted(amps(first.value()), need.category, margin(first.value(), need.amps), next),
        first.value(),
        "A");
    return Optional.of(first.value());
  }

  private static String margin(double has, double needs) {
    return String.format(Locale.ROOT, "margin %.0f %%", (has / needs - 1) * 100);
  }

  private void life(Question q, double rating) {
    if (q.startsPerDay().isEmpty()) {
      return;
    }
    double starts = q.startsPerDay().getAsDouble();
    Cited<Double> given = tables.figure("sizing.series-life");
    Endurance endurance =
        Endurance.of(given.value(), rating, q.nominal(), Optional.empty(), tables);
    cited.add(given);
    cited.addAll(endurance.cited());
    double years = endurance.years(starts);
    boolean enough = years >= q.years() * (1 - 1e-9);
    fits &= enough;
    add(
        "life",
        "life",
        "%s years at %s starts a day, 365 days a year: %s %s asked (%s; assumed, its own data sheet counts)"
            .formatted(
                String.format(Locale.ROOT, "%.0f", years),
                plain(starts),
                enough ? "enough for the" : "too few for the",
                plain(q.years()),
                endurance.words()),
        years,
        "years");
  }

  /** What would make a smaller one do. */
  private void smaller(Question q, Optional<Double> chosen) {
    List<String> ways = new ArrayList<>();
    if (q.closeMounted()) {
      suits(q.spaced(), chosen).ifPresent(r -> ways.add("a gap on both sides: " + amps(r)));
    }
    double normal = q.ratedAir().orElse(tables.figure("sizing.rated-air").value());
    if (q.air() > normal) {
      suits(q.inAir(normal), chosen)
          .ifPresent(
              r ->
                  ways.add(
                      "air at %s: %s"
                          .formatted(Printed.of(normal, Dimension.TEMPERATURE), amps(r))));
    }
    if (q.wires() == 3 && q.title().contains("delta")) {
      suits(q.inStar(), chosen)
          .ifPresent(r -> ways.add("star in place of delta, a third of the power: " + amps(r)));
    }
    if (!ways.isEmpty()) {
      add("smaller", "a smaller one", "would do with " + String.join(";  ", ways));
    }
  }

  private Optional<Double> suits(Question q, Optional<Double> chosen) {
    return need(q)
        .known()
        .flatMap(n -> Series.next("contactor-ratings", n.amps, tables))
        .map(Cited::value)
        .filter(r -> chosen.isEmpty() || r < chosen.get());
  }

  private Optional<Cited<Double>> device(Question q, Optional<Double> contactor) {
    Optional<Cited<Double>> device;
    String how;
    if (q.nec()) {
      Cited<Double> continuous = tables.figure("sizing.continuous-load");
      double needs = q.nominal() * continuous.value();
      cited.add(continuous);
      device = Series.atLeast(needs, tables);
      how = "%s × %s = %s".formatted(amps(q.nominal()), plain(continuous.value()), amps(needs));
      Cited<Double> from = tables.figure("sizing.appliance-device-from");
      if (q.appliance() && q.nominal() > from.value()) {
        Cited<Double> share = tables.figure("sizing.appliance-device");
        double most = q.nominal() * share.value();
        cited.add(share);
        how +=
            Series.atLeast(most, tables)
                .map(
                    r ->
                        "; at most %s (next above %s × %s = %s)"
                            .formatted(
                                amps(r.value()),
                                amps(q.nominal()),
                                plain(share.value()),
                                amps(most)))
                .orElse("");
      }
    } else {
      Cited<Double> holds =
          tables.lookup("overload-device", Map.of("device", "breaker-60898"), "i1").orElseThrow();
      cited.add(holds);
      device =
          Series.next("breaker-ratings", Math.max(q.nominal(), q.worst() / holds.value()), tables);
      how =
          "at least %s, and %s ÷ %s (what does not trip it)"
              .formatted(amps(q.nominal()), amps(q.worst()), plain(holds.value()));
    }
    if (device.isEmpty()) {
      fits = false;
      add("breaker", "breaker", "no standard rating is large enough (%s)".formatted(how));
      return device;
    }
    cited.add(device.get());
    String more =
        contactor.filter(c -> device.get().value() > c).isPresent()
            ? "; larger than the contactor, so ask its maker for the back-up it allows"
            : "; its maker's back-up figure must allow it";
    add(
        "breaker",
        "breaker",
        amps(device.get().value()) + " (" + how + ")" + more,
        device.get().value(),
        "A");
    return device;
  }

  private void wire(Question q, double device) {
    Ampacity ampacity = new Ampacity(tables);
    Ampacity.Laid laid = new Ampacity.Laid(q.method(), q.wires(), q.wireAir(), 1);
    List<ConductorSize> sizes =
        q.nec()
            ? GAUGES.stream().map(ConductorSize::ofAwg).toList()
            : METRIC.stream().map(ConductorSize::ofMm2).toList();
    String last = "";
    for (ConductorSize size : sizes) {
      Found<Derated> found = ampacity.of(size, laid);
      if (found instanceof Found.Unknown<Derated> unknown) {
        last = unknown.why();
        continue;
      }
      Derated may = found.known().orElseThrow();
      boolean carries =
          q.nec()
              ? Series.largestFor(size, may.amps(), tables)
                      .filter(l -> l.value() >= device)
                      .isPresent()
                  && may.amps()
                      >= q.nominal() * tables.figure("sizing.continuous-load").value() * (1 - 1e-9)
              : may.amps() >= device * (1 - 1e-9);
      Optional<Drop> drop = drop(q, size);
      boolean near = drop.isEmpty() || drop.get().volts <= drop.get().limit * (1 + 1e-9);
      if (carries && near) {
        cited.addAll(may.basis());
        add(
            "wire",
            "wire",
            "%s copper, method %s: may carry %s"
                .formatted(Printed.of(size), q.method(), may.words()),
            size.mm2(),
            "mm²");
        drop.ifPresent(this::tell);
        shortCircuit(q, size, device);
        return;
      }
      last = carries ? "the voltage drop is too large" : "they carry too little";
    }
    fits = false;
    add("wire", "wire", "no tabulated size fits: " + last);
  }

  private record Drop(double volts, double limit, String words, List<Cited<?>> cited) {}

  private Optional<Drop> drop(Question q, ConductorSize size) {
    if (q.lengthMetres().isEmpty()) {
      return Optional.empty();
    }
    return new ConductorTable(tables)
        .ohmPerKm(size, false)
        .map(
            perKm -> {
              double hot =
                  CopperLaw.from(tables)
                      .at(
                          perKm.value(),
                          20,
                          tables.figure("sizing.insulation-temperature").value());
              double ohms = hot * q.lengthMetres().getAsDouble() / 1000;
              double lost = q.nominal() * ohms * (q.wires() == 3 ? Math.sqrt(3) : 2);
              Cited<Double> limit =
                  tables
                      .lookup(
                          "voltage-drop-limits",
                          Map.of("supply", q.nec() ? "nec-branch" : "public"),
                          "other")
                      .orElseThrow();
              return new Drop(
                  lost,
                  limit.value() * q.volts(),
                  "%s (%s) over %s: %s × %s × %s at 70 °C; at most %s"
                      .formatted(
                          Printed.volts(lost),
                          Printed.percent(lost / q.volts()),
                          Printed.of(q.lengthMetres().getAsDouble(), Dimension.LENGTH),
                          q.wires() == 3 ? "√3" : "2",
                          amps(q.nominal()),
                          Printed.of(ohms, Dimension.RESISTANCE),
                          Printed.percent(limit.value())),
                  List.of(perKm, limit));
            });
  }

  private void tell(Drop drop) {
    cited.addAll(drop.cited);
    add("drop", "voltage drop", drop.words, drop.volts, "V");
  }

  private void shortCircuit(Question q, ConductorSize size, double device) {
    if (q.faultAmps().isEmpty()) {
      return;
    }
    Cited<Double> k = ShortCircuit.copperInPvc(tables);
    Cited<Double> time = tables.figure("sizing.magnetic-time");
    double fault = q.faultAmps().getAsDouble();
    double stands = ShortCircuit.stands(k.value(), size.mm2());
    double through = fault * fault * time.value();
    cited.add(k);
    cited.add(time);
    String words = "%s for 0.1 s".formatted(amps(fault));
    if (through > stands && device <= 32) {
      Optional<Cited<Double>> limited =
          tables.lookup(
              "let-through",
              Map.of("curve", "B", "ratings", device <= 16 ? "up-to-16" : "up-to-32"),
              fault,
              "energy");
      if (limited.isPresent()) {
        cited.add(limited.get());
        through = limited.get().value();
        words = "type B, energy limiting class 3, at " + amps(fault);
      }
    }
    boolean enough = through <= stands * (1 + 1e-9);
    add(
        "short-circuit",
        "short-circuit",
        "%s: %.0f A²s; the wire stands %.0f A²s (%s² × %s²)%s"
            .formatted(
                words,
                through,
                stands,
                plain(k.value()),
                plain(size.mm2()),
                enough ? "" : "; ask the breaker's maker for its let-through energy"),
        through,
        "A²s");
    fits &= enough;
  }

  private void coil(Question q, double rating) {
    Optional<Cited<Double>> holding =
        tables.lookup("contactor-ratings", Map.of(), rating, "holding");
    if (holding.isEmpty()) {
      return;
    }
    cited.add(holding.get());
    double volts = q.nec() ? 120 : 230;
    String coil =
        "%s AC, about %s holding (%s)"
            .formatted(
                Printed.volts(volts),
                Printed.of(holding.get().value(), Dimension.APPARENT_POWER),
                amps(holding.get().value() / volts));
    String drive =
        q.output()
            .map(
                o -> {
                  double at = o.at().map(a -> a.nominal()).orElse(0.0);
                  double may = o.amount().nominal();
                  return at >= volts && may >= holding.get().value() / volts
                      ? "; the output, %s at %s, can drive it if its rating is AC-15 and makes the pick-up current"
                          .formatted(amps(may), Printed.volts(at))
                      : "; the output, %s at %s, cannot: an interposing relay is needed"
                          .formatted(amps(may), Printed.volts(at));
                })
            .orElse("; a volt-free output for extra-low voltage needs an interposing relay");
    add("coil", "coil", coil + drive);
  }

  private List<Cited<Double>> series(String table) {
    return tables.table(table).rows().stream().flatMap(r -> r.number("amps").stream()).toList();
  }

  private void add(String key, String label, String text) {
    lines.add(new Line(key, label, text, OptionalDouble.empty(), ""));
  }

  private void add(String key, String label, String text, double value, String unit) {
    lines.add(new Line(key, label, text, OptionalDouble.of(value), unit));
  }

  private static String amps(double amps) {
    return amps >= 1 && amps < 100
        ? String.format(Locale.ROOT, amps == Math.rint(amps) ? "%.0f A" : "%.1f A", amps)
        : Printed.amps(amps);
  }

  private static String plain(double number) {
    return Printed.of(number, Dimension.COUNT);
  }
}
