// Over 250 lines: one answer, worked out from top to bottom.
package org.coilwright.sizing;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.quantity.Rating;
import org.coilwright.table.Cited;
import org.coilwright.table.CitedTable;
import org.coilwright.table.Tables;

/** Works a {@link Question} out: contactor, device, wire, coil. Never past the end of a table. */
public final class Chooser extends Working {
  private Chooser(Tables tables) {
    super(tables);
  }

  /** The answer. */
  public static Choice answer(Question question, Tables tables) {
    return new Chooser(tables).work(question);
  }

  /** The wire behind a device alone, all else of the question as it is. */
  public static Choice wireBehind(double device, Question question, Tables tables) {
    Chooser chooser = new Chooser(tables);
    new WireChoice(chooser, question).wire(device);
    return chooser.done(question);
  }

  private Choice work(Question q) {
    cited.addAll(q.basis());
    add(
        "current",
        "current",
        "%s at %s;  %s %s"
            .formatted(
                amps(q.load().nominal()),
                Printed.volts(q.load().volts()),
                amps(q.load().worst()),
                q.load().worstWords()),
        q.load().worst(),
        "A");
    Found<Need> found = need(q);
    if (found instanceof Found.Unknown<Need> unknown) {
      doesNotFit();
      add(
          "needs",
          "needs",
          "could not be worked out for %s. %s".formatted(unknown.missing(), unknown.why()));
      return done(q);
    }
    Need need = found.known().orElseThrow();
    cited.addAll(need.cited);
    add("needs", "needs in free air", need.words, need.amps, "A");
    boolean standing = standsVoltage(q);
    Optional<Double> chosen = standing ? contactor(need, q) : Optional.empty();
    chosen.ifPresent(r -> life(q, r));
    add(
        "poles",
        "poles",
        q.load().poles() == 1
            ? "1, for the one line; the neutral stays on the load"
            : q.load().poles() == 4
                ? "4, so that nothing stays on the load; 3 take every line off it, and the neutral"
                    + " stays"
                : "%s, so that nothing stays on the load".formatted(q.load().poles()),
        q.load().poles(),
        "");
    if (standing) {
      smaller(q, chosen);
    }
    DeviceChoice devices = new DeviceChoice(this, q);
    devices.device(chosen).ifPresent(d -> new WireChoice(this, q).wire(d.value()));
    chosen.ifPresent(devices::coil);
    return done(q);
  }

  private Choice done(Question q) {
    return new Choice(q, fits(), List.copyOf(lines), List.copyOf(cited));
  }

  private record Need(double amps, String words, String category, List<Cited<?>> cited) {}

  /** The rating that the contactor must have. */
  private Found<Need> need(Question q) {
    Found<List<Factor>> factors =
        new ContactConditions(
                q.place().air(),
                q.place().ratedAir(),
                q.place().isClose(),
                q.place().altitude(),
                q.supply().hertz(),
                1)
            .factors(tables);
    if (factors instanceof Found.Unknown<List<Factor>> u) {
      return new Found.Unknown<>(u.missing(), u.why());
    }
    List<Factor> all = new ArrayList<>(factors.known().orElse(List.of()));
    if (q.service().duty() == Duty.UNINTERRUPTED) {
      tables
          .lookup("contact-duty", Map.of("duty", q.service().duty().word()), "factor")
          .ifPresent(f -> all.add(new Factor(Factor.Cause.DUTY, f, "uninterrupted duty")));
    }
    List<CitedTable.Row> covering =
        tables.table("load-category").rows().stream()
            .filter(r -> r.word("load").map(Cited::value).equals(Optional.of(q.load().kind())))
            .toList();
    if (covering.isEmpty()) {
      return new Found.Unknown<>(
          "a load of kind " + q.load().kind(), "No category is known for it.");
    }
    Cited<String> category = covering.get(0).word("category").orElseThrow();
    String inrush = covering.get(0).word("inrush").map(Cited::value).orElse("");
    Optional<Cited<Double>> atFirst = Making.inrush(inrush, tables);
    Optional<Cited<Double>> multiple = Making.makes(category.value(), tables);
    if (atFirst.isEmpty() || multiple.isEmpty()) {
      return new Found.Unknown<>(
          (atFirst.isEmpty() ? "the inrush of a load of kind " + q.load().kind() : "what %s makes")
              .formatted(category.value()),
          Making.whyNot(category.value(), tables)
              .map(why -> "It is not in the tables: %s.".formatted(why))
              .orElse("No table gives it."));
    }
    Cited<Double> first = atFirst.get();
    Cited<Double> makes = multiple.get();
    double carries = q.load().worst();
    StringBuilder words = new StringBuilder(amps(q.load().worst()));
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
    double making = q.load().worst() * first.value() / makes.value();
    words.append(
        "; to make %s (%s × %s) it needs %s (÷ %s)"
            .formatted(
                amps(q.load().worst() * first.value()),
                amps(q.load().worst()),
                plain(first.value()),
                amps(making),
                plain(makes.value())));
    return new Found.Known<>(
        new Need(Math.max(carries, making), words.toString(), category.value(), from));
  }

  /** Whether the series stands the voltage, less of it in thin air; says so if it does not. */
  private boolean standsVoltage(Question q) {
    Cited<Double> most =
        tables.lookup("household-limits", Map.of("category", "AC-7a"), "volts").orElseThrow();
    Optional<Cited<Double>> thin = Optional.empty();
    if (q.place().altitude().isPresent()) {
      thin =
          tables
              .lookup("contact-altitude", Map.of(), q.place().altitude().getAsDouble(), "voltage")
              .filter(f -> f.value() < 1);
    }
    double limit = most.value() * thin.map(Cited::value).orElse(1.0);
    cited.add(most);
    thin.ifPresent(cited::add);
    if (!Comparison.exceeds(q.load().volts(), limit)) {
      return true;
    }
    doesNotFit();
    add(
        "choose",
        "choose",
        "nothing in this series fits: the load has %s, and it is for %s at most%s"
            .formatted(
                Printed.volts(q.load().volts()),
                Printed.volts(limit),
                thin.map(
                        f ->
                            " (%s × %s at %s above the sea)"
                                .formatted(
                                    Printed.volts(most.value()),
                                    plain(f.value()),
                                    Printed.of(
                                        q.place().altitude().getAsDouble(), Dimension.LENGTH)))
                    .orElse("")));
    return false;
  }

  private Optional<Double> contactor(Need need, Question q) {
    List<Cited<Double>> series = series("contactor-ratings");
    List<Cited<Double>> enough =
        series.stream().filter(r -> !Comparison.fallsShort(r.value(), need.amps)).toList();
    if (enough.isEmpty()) {
      doesNotFit();
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
        "%s %s (%s)%s%s"
            .formatted(
                amps(first.value()),
                need.category,
                margin(first.value(), need.amps),
                next,
                ratedAir(q)),
        first.value(),
        "A");
    return Optional.of(first.value());
  }

  /** Says for which air the rating has to hold where that is not what a series usually does. */
  private String ratedAir(Question q) {
    Cited<Double> normal = tables.figure("sizing.rated-air");
    if (q.place().ratedAir().isEmpty() || q.place().ratedAir().getAsDouble() == normal.value()) {
      return "";
    }
    return "; this is for one whose rating holds in air up to %s; one whose rating holds to %s: %s"
        .formatted(
            Printed.of(q.place().ratedAir().getAsDouble(), Dimension.TEMPERATURE),
            Printed.of(normal.value(), Dimension.TEMPERATURE),
            suits(q.ratedFor(normal.value()), Optional.empty())
                .map(Working::amps)
                .orElse("none in this series"));
  }

  private static String margin(double has, double needs) {
    return String.format(Locale.ROOT, "margin %.0f %%", (has / needs - 1) * 100);
  }

  private void life(Question q, double rating) {
    if (q.service().startsPerDay().isEmpty()) {
      add("life", "life", "not worked out: give --starts-per-day");
      return;
    }
    double starts = q.service().startsPerDay().getAsDouble();
    Cited<Double> usual = tables.figure("sizing.series-life");
    double given = q.service().life().map(l -> l.amount().nominal()).orElse(usual.value());
    double at = q.service().life().flatMap(Rating::at).map(Quantity::nominal).orElse(rating);
    Endurance endurance = Endurance.of(given, at, q.load().nominal(), Optional.empty(), tables);
    if (q.service().life().isEmpty()) {
      cited.add(usual);
    }
    cited.addAll(endurance.cited());
    double years = endurance.years(starts);
    boolean enough = !Comparison.fallsShort(years, q.service().years());
    if (!enough) {
      doesNotFit();
    }
    add(
        "life",
        "life",
        "%s years at %s starts a day, 365 days a year: %s %s asked%s (%s%s)"
            .formatted(
                String.format(Locale.ROOT, years < 10 ? "%.1f" : "%.0f", years),
                plain(starts),
                enough ? "enough for the" : "too few for the",
                plain(q.service().years()),
                enough && q.service().life().isEmpty()
                    ? ", if it lasts the %s cycles assumed here"
                        .formatted(Endurance.thousands(given))
                    : "",
                endurance.words(),
                q.service().life().isPresent()
                    ? ""
                    : "; the first figure is assumed: give --life from its data sheet, halved if"
                        + " that counts closing and opening apart"),
        years,
        "years");
  }

  /** What would make a smaller one do. */
  private void smaller(Question q, Optional<Double> chosen) {
    List<String> ways = new ArrayList<>();
    double normal = q.place().ratedAir().orElse(tables.figure("sizing.rated-air").value());
    boolean warm = q.place().air() > normal;
    String cooler = "air at " + Printed.of(normal, Dimension.TEMPERATURE);
    Optional<Double> alone = Optional.empty();
    if (q.place().isClose()) {
      alone = way(ways, "a gap on both sides", q.spaced(), chosen);
    }
    if (warm) {
      Optional<Double> cooled = way(ways, cooler, q.inAir(normal), chosen);
      alone = cooled.isPresent() ? cooled : alone;
      way(
          ways,
          "one rated for air at " + Printed.of(q.place().air(), Dimension.TEMPERATURE),
          q.ratedFor(q.place().air()),
          chosen);
    }
    if (q.place().isClose() && warm) {
      way(
          ways,
          "a gap and %s together".formatted(cooler),
          q.spaced().inAir(normal),
          alone.isPresent() ? alone : chosen);
    }
    if (q.load().delta()) {
      way(ways, "star in place of delta, a third of the power", q.inStar(), chosen);
    }
    if (!ways.isEmpty()) {
      add("smaller", "a smaller one", "would do with " + String.join(";  ", ways));
    }
  }

  private Optional<Double> way(
      List<String> ways, String words, Question other, Optional<Double> chosen) {
    Optional<Double> rating = suits(other, chosen);
    rating.ifPresent(r -> ways.add("%s: %s".formatted(words, amps(r))));
    return rating;
  }

  private Optional<Double> suits(Question q, Optional<Double> chosen) {
    return need(q)
        .known()
        .flatMap(n -> Series.next("contactor-ratings", n.amps, tables))
        .map(Cited::value)
        .filter(r -> chosen.isEmpty() || r < chosen.get());
  }

  private List<Cited<Double>> series(String table) {
    return tables.table(table).rows().stream().flatMap(r -> r.number("amps").stream()).toList();
  }
}
