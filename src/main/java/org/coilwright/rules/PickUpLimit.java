package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Basis;
import org.coilwright.sizing.Found;
import org.coilwright.sizing.OpeningTimes;
import org.coilwright.sizing.Overcurrent;
import org.coilwright.sizing.PowerSide.Demand;
import org.coilwright.sizing.Series;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/**
 * What a fuse or circuit-breaker stands without opening: for good, and for the moment in which
 * coils pull in.
 *
 * @param device with a rating written
 */
record PickUpLimit(Part device, Site.Practice practice, Tables tables) {
  /**
   * What it stands for 0.1 s.
   *
   * @param words after the figure: {@code for 0.1 s (3 × 6 A)}
   */
  record Stands(double amps, String words, List<Cited<?>> cited) {}

  private double rating() {
    return Overcurrent.rating(device).orElseThrow();
  }

  /**
   * What it carries for good, A: its rating, and where loads draw through it, whose figures have a
   * tolerance of their own in the sum, what surely does not open it.
   */
  double carries(boolean loads) {
    return loads ? rating() * holds().map(Cited::value).orElse(1.0) : rating();
  }

  private Optional<Cited<Double>> holds() {
    return Overcurrent.surelyHolds(device, practice, tables);
  }

  /** What the steady limit rests on. */
  Basis basis(Optional<Demand> demand) {
    List<Cited<?>> cited = new ArrayList<>(List.of(tables.figure("sizing.overload-share")));
    if (demand.isPresent()) {
      holds().ifPresent(cited::add);
      demand.get().loads().forEach(l -> cited.addAll(l.basis()));
    }
    return Basis.of(cited);
  }

  /**
   * What it stands while coils pull in.
   *
   * @param amps what they take: up to what it carries for good nothing more need be known of it
   */
  Found<Stands> stands(double amps) {
    double rating = rating();
    if (!Comparison.exceeds(amps, rating)) {
      return new Found.Known<>(new Stands(rating, "for good", List.of()));
    }
    return device instanceof Part.Fuse fuse ? fuse(fuse, rating) : breaker(rating);
  }

  private Found<Stands> fuse(Part.Fuse fuse, double rating) {
    if (fuse.family().isEmpty()) {
      return new Found.Unknown<>(
          "family of " + fuse.name(),
          "How long %s stands that depends on what it is made to.".formatted(fuse.name()));
    }
    Optional<Cited<Double>> gate =
        fuse.family().filter(f -> f.value().equals("gG")).flatMap(f -> gate(rating));
    return gate.<Found<Stands>>map(
            g -> new Found.Known<>(new Stands(g.value(), "for 0.1 s", List.of(g))))
        .orElseGet(() -> byMaker("No table read here says what it stands for 0.1 s."));
  }

  private Optional<Cited<Double>> gate(double rating) {
    return tables.lookup("fuse-holding", Map.of(), rating, "t01");
  }

  private Found<Stands> breaker(double rating) {
    Part.Protective breaker = (Part.Protective) device;
    if (!new OpeningTimes(practice, tables).standard(breaker).equals("IEC 60898-1")) {
      return byMaker("Its standard fixes no magnetic release.");
    }
    if (breaker.curve().isEmpty()) {
      return new Found.Unknown<>(
          "curve of " + breaker.name(), "Where its magnetic release begins is not written.");
    }
    return multiple(breaker)
        .<Found<Stands>>map(
            m ->
                new Found.Known<>(
                    new Stands(
                        m.value() * rating,
                        "for 0.1 s (%s × %s)"
                            .formatted(
                                Printed.of(m.value(), Dimension.COUNT),
                                Printed.of(rating, Dimension.CURRENT)),
                        List.of(m))))
        .orElseGet(() -> byMaker("No standard fixes where its magnetic release begins."));
  }

  private Optional<Cited<Double>> multiple(Part.Protective breaker) {
    return breaker
        .curve()
        .map(Written::value)
        .flatMap(c -> tables.lookup("magnetic-trip", Map.of("curve", c), "holds"));
  }

  private Found<Stands> byMaker(String why) {
    return new Found.Unknown<>(
        "time-current curve of " + device.name(),
        why,
        "The netlist cannot settle it: read it off the time-current curve that the maker of %s publishes."
            .formatted(device.name()));
  }

  /**
   * The smallest rating that is made and stands both; empty if none is known to.
   *
   * @param holds A for good
   * @param pullIn A for 0.1 s
   * @param loads true if loads draw through it as well
   */
  Optional<Cited<Double>> larger(double holds, double pullIn, boolean loads) {
    double share = loads ? holds().map(Cited::value).orElse(1.0) : 1;
    if (device instanceof Part.Fuse) {
      return tables.table("fuse-holding").rows().stream()
          .filter(r -> r.number("rating").filter(a -> a.value() * share >= holds).isPresent())
          .filter(r -> r.number("t01").filter(a -> a.value() >= pullIn).isPresent())
          .flatMap(r -> r.number("rating").stream())
          .findFirst();
    }
    double times = multiple((Part.Protective) device).map(Cited::value).orElse(1.0);
    return Series.breakerAtLeast(Math.max(holds / share, pullIn / times), tables);
  }
}
