// Over 250 lines: breakers and fuses give their steps to one staircase.
package org.coilwright.sizing;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.table.Cited;
import org.coilwright.table.CitedTable;
import org.coilwright.table.Tables;

/**
 * How long an overcurrent device takes to open, at the latest, by the current through it. Only the
 * points at which its standard tests it are known: the longest time of one holds up to the next, a
 * staircase. A fuse of no written family is taken as the slowest of them.
 */
public final class OpeningTimes {
  /** A step of the staircase: from {@code amps} on it has opened within {@code seconds}. */
  private record Step(double amps, double seconds, String how, List<Cited<?>> cited) {}

  /** Columns of the fuse table with the time that each is for, s. */
  private static final Map<String, Double> FUSE_TIMES = Map.of("t5", 5.0, "t04", 0.4, "t01", 0.1);

  private static final List<String> FUSE_COLUMNS = List.of("t5", "t04", "t01");
  private static final List<String> FAMILIES = List.of("gG", "BS 88-2", "BS 88-3", "BS 1362");

  /** Upper end of the ratings of each class in the table of breakers, A. */
  private static final Map<String, List<Integer>> CLASSES =
      Map.of(
          "IEC 60898-1", List.of(32, 63, 125),
          "IEC 60947-2", List.of(63, 1600),
          "UL 489", List.of(30, 50, 100));

  private static final double HOUR = 3600;

  private final Site.Practice practice;
  private final Tables tables;

  public OpeningTimes(Site.Practice practice, Tables tables) {
    this.practice = practice;
    this.tables = tables;
  }

  /**
   * The least current that surely opens a device in time.
   *
   * @param amps A
   * @param words how it comes about: {@code 5 × 16 A}
   */
  public record Least(double amps, String words, List<Cited<?>> cited) {}

  /** What a breaker is made to: as written, else what the practice uses. */
  public String standard(Part.Protective breaker) {
    return breaker
        .standard()
        .map(Written::value)
        .orElse(practice == Site.Practice.NEC ? "UL 489" : "IEC 60898-1");
  }

  /**
   * What a fuse or circuit-breaker does with a current that goes on, from cold.
   *
   * @param amps A, 0 or more
   */
  public Opening at(Part device, double amps) {
    Found<List<Step>> found = steps(device);
    if (found instanceof Found.Unknown<List<Step>> unknown) {
      return new Opening.Unknown(unknown.missing(), unknown.why(), unknown.settledBy());
    }
    double rating = Overcurrent.rating(device).orElseThrow();
    Optional<Cited<Double>> holds = Overcurrent.surelyHolds(device, practice, tables);
    if (holds.isPresent() && !Comparison.exceeds(amps, holds.get().value() * rating)) {
      return new Opening.Never(
          List.of(holds.get()),
          "%s carries %s for good (up to %s)"
              .formatted(device.name(), amps(amps), product(holds.get().value(), rating)));
    }
    Step reached = null;
    List<Step> steps = found.known().orElseThrow();
    for (Step step : steps) {
      if (!Comparison.fallsShort(amps, step.amps())) {
        reached = step;
      }
    }
    if (reached == null) {
      return new Opening.MayNot(
          holds.<List<Cited<?>>>map(List::of).orElse(List.of()),
          "%s may never open at %s, as it surely opens only from %s on (%s)"
              .formatted(device.name(), amps(amps), amps(steps.get(0).amps()), steps.get(0).how()));
    }
    return new Opening.Within(
        reached.seconds(),
        reached.cited(),
        "%s may take %s at %s, as it does from %s on (%s)"
            .formatted(
                device.name(),
                Printed.of(reached.seconds(), Dimension.TIME),
                amps(amps),
                amps(reached.amps()),
                reached.how()));
  }

  /**
   * The least current at which a device has surely opened after some time.
   *
   * @param seconds s, above 0
   */
  public Found<Least> within(Part device, double seconds) {
    Found<List<Step>> found = steps(device);
    if (found instanceof Found.Unknown<List<Step>> unknown) {
      return new Found.Unknown<>(unknown.missing(), unknown.why(), unknown.settledBy());
    }
    for (Step step : found.known().orElseThrow()) {
      if (!Comparison.exceeds(step.seconds(), seconds)) {
        return new Found.Known<>(new Least(step.amps(), step.how(), step.cited()));
      }
    }
    return noCurve(
        device,
        "No standard says at which current %s opens within %s."
            .formatted(device.name(), Printed.of(seconds, Dimension.TIME)));
  }

  private static <T> Found<T> noCurve(Part device, String why) {
    return new Found.Unknown<>(
        "time-current curve of " + device.name(),
        why,
        "The netlist cannot settle it: read it off the time-current curve that the maker of %s publishes."
            .formatted(device.name()));
  }

  /**
   * A range of currents in which a device takes one time.
   *
   * @param to A, the upper end
   * @param seconds s, the longest it takes
   */
  public record Span(double to, double seconds, List<Cited<?>> cited) {}

  /**
   * The spans between two currents, the slowest first; what lies below the first test of the device
   * has none.
   *
   * @param least A
   * @param most A, not below {@code least}
   */
  public List<Span> between(Part device, double least, double most) {
    List<Step> steps = steps(device).known().orElse(List.of());
    List<Span> spans = new ArrayList<>();
    for (int i = 0; i < steps.size(); i++) {
      double end = i + 1 < steps.size() ? steps.get(i + 1).amps() : Double.POSITIVE_INFINITY;
      boolean begun = !Comparison.fallsShort(most, steps.get(i).amps());
      if (begun && Comparison.fallsShort(least, end)) {
        spans.add(new Span(Math.min(most, end), steps.get(i).seconds(), steps.get(i).cited()));
      }
    }
    return List.copyOf(spans);
  }

  private Found<List<Step>> steps(Part device) {
    OptionalDouble rating = Overcurrent.rating(device);
    if (rating.isEmpty()) {
      return new Found.Unknown<>(
          "rating of " + device.name(),
          "The rating of %s is not written.".formatted(device.name()));
    }
    return device instanceof Part.Fuse fuse
        ? fuse(fuse, rating.getAsDouble())
        : breaker((Part.Protective) device, rating.getAsDouble());
  }

  private Found<List<Step>> breaker(Part.Protective breaker, double rating) {
    String standard = standard(breaker);
    boolean byCurve = standard.equals("IEC 60898-1");
    if (byCurve && breaker.curve().isEmpty()) {
      return new Found.Unknown<>(
          "curve of " + breaker.name(),
          "The curve of %s is not written.".formatted(breaker.name()));
    }
    Optional<Integer> upTo =
        CLASSES.getOrDefault(standard, List.of()).stream().filter(m -> rating <= m).findFirst();
    if (upTo.isEmpty()) {
      return noCurve(
          breaker,
          "No table read here says how fast a breaker of %s opens.".formatted(amps(rating)));
    }
    List<Step> steps = new ArrayList<>();
    for (CitedTable.Row row :
        tables
            .table("breaker-opening")
            .rows(
                Map.of(
                    "standard",
                    standard,
                    "curve",
                    byCurve ? breaker.curve().map(Written::value).orElse("") : "any",
                    "ratings",
                    "up-to-" + upTo.get()))) {
      Cited<Double> multiple = row.number("multiple").orElseThrow();
      Cited<Double> seconds = row.number("seconds").orElseThrow();
      steps.add(
          new Step(
              multiple.value() * rating,
              seconds.value(),
              product(multiple.value(), rating),
              List.of(seconds)));
    }
    return new Found.Known<>(steps);
  }

  private Found<List<Step>> fuse(Part.Fuse fuse, double rating) {
    List<String> families = fuse.family().map(f -> List.of(f.value())).orElse(FAMILIES);
    if (tables.lookup("fuse-opening", Map.of("family", families.get(0)), rating, "t5").isEmpty()) {
      String why =
          "No table read here says when a fuse of %s%s opens."
              .formatted(amps(rating), fuse.family().map(f -> " to " + f.value()).orElse(""));
      return fuse.family().isPresent()
          ? noCurve(fuse, why)
          : new Found.Unknown<>("family of " + fuse.name(), why);
    }
    List<Step> steps = new ArrayList<>();
    Overcurrent.surelyOpensAt(fuse, practice, tables)
        .ifPresent(
            i2 ->
                steps.add(
                    new Step(i2.value() * rating, HOUR, product(i2.value(), rating), List.of(i2))));
    for (String column : FUSE_COLUMNS) {
      slowest(families, rating, column).ifPresent(steps::add);
    }
    return new Found.Known<>(steps);
  }

  private Optional<Step> slowest(List<String> families, double rating, String column) {
    Step slowest = null;
    for (String family : families) {
      Optional<Cited<Double>> amps =
          tables.lookup("fuse-opening", Map.of("family", family), rating, column);
      if (amps.isPresent() && (slowest == null || amps.get().value() > slowest.amps())) {
        slowest =
            new Step(
                amps.get().value(),
                FUSE_TIMES.getOrDefault(column, HOUR),
                "%s of %s".formatted(family, amps(rating)),
                List.of(amps.get()));
      }
    }
    return Optional.ofNullable(slowest);
  }

  private static String product(double multiple, double rating) {
    return "%s × %s".formatted(Printed.of(multiple, Dimension.COUNT), amps(rating));
  }

  private static String amps(double amps) {
    return Printed.of(amps, Dimension.CURRENT);
  }
}
