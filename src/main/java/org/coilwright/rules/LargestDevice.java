package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.netlist.Part;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome.Violated;
import org.coilwright.rule.Subject;
import org.coilwright.sizing.Derated;
import org.coilwright.sizing.Overcurrent;
import org.coilwright.sizing.Series;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/**
 * The largest device that the wires of a stretch may have against overload.
 *
 * @param carries A, as laid
 * @param amps A, the rating of the device
 * @param how the way from one to the other, for messages
 * @param gauge true for sizes by gauge
 */
record LargestDevice(double carries, double amps, String how, boolean gauge, List<Cited<?>> cited) {

  /**
   * Works it out.
   *
   * @param devices which together shall limit it; one of them may be slow
   */
  static LargestDevice of(Stretch stretch, List<Part> devices, Derated may, Tables tables) {
    boolean gauge = stretch.size().filter(s -> s.awg().isPresent()).isPresent();
    // the code takes control conductors without the factors of 310.15
    boolean control = gauge && stretch.loads().isEmpty() && stretch.guard().isPresent();
    double carries = control ? may.rated() : may.amps();
    List<Cited<?>> cited = new ArrayList<>(control ? may.cited() : may.basis());
    String how =
        control
            ? "%s, a control conductor (725.43)".formatted(Printed.of(carries, Dimension.CURRENT))
            : may.words();
    double limit = carries;
    if (gauge && devices.size() == 1) {
      Optional<Cited<Double>> largest =
          Series.largestFor(stretch.size().orElseThrow(), limit, tables);
      if (largest.isPresent()) {
        limit = largest.get().value();
        how += ", so a device of %s at most".formatted(Printed.of(limit, Dimension.CURRENT));
        cited.add(largest.get());
      }
    } else if (devices.size() == 1) {
      Optional<Cited<Double>> opens =
          Overcurrent.surelyOpensAt(devices.get(0), stretch.practice(), tables);
      Cited<Double> share = tables.figure("sizing.overload-share");
      if (opens.isPresent() && opens.get().value() > share.value()) {
        limit = limit * share.value() / opens.get().value();
        how +=
            "; × %s ÷ %s, as a fuse opens late, = %s"
                .formatted(
                    Printed.of(share.value(), Dimension.COUNT),
                    Printed.of(opens.get().value(), Dimension.COUNT),
                    Printed.of(limit, Dimension.CURRENT));
        cited.add(opens.get());
        cited.add(share);
      }
    }
    return new LargestDevice(carries, limit, how, gauge, List.copyOf(cited));
  }

  /** {@code 13 A}, a breaker that is made, or with gauges the limit itself. */
  String words(Tables tables) {
    return gauge
        ? Printed.atMost(amps, Dimension.CURRENT)
        : Series.breakerUpTo(amps, tables)
            .map(r -> Printed.of(r.value(), Dimension.CURRENT))
            .orElse(Printed.atMost(amps, Dimension.CURRENT));
  }

  /** True if what limits the current in it lets through no more than it may carry. */
  static boolean isGuarded(Stretch stretch, Derated may, Tables tables) {
    return stretch.neutral()
        || stretch
            .limiting()
            .filter(
                devices ->
                    Stretch.rating(devices).isPresent()
                        && !Comparison.exceeds(
                            Stretch.rating(devices).getAsDouble(),
                            of(stretch, devices, may, tables).amps()))
            .isPresent();
  }

  /**
   * Only what can be done: no device below what the loads behind it draw.
   *
   * @param size a wire that would do
   */
  Violated cure(
      Subject.Finding finding,
      Stretch stretch,
      List<Part> devices,
      Optional<ConductorSize> size,
      Tables tables) {
    String thicker = stretch.thickerWords(size);
    Runnable byWire =
        () -> size.ifPresent(s -> finding.changes(stretch.sizeMarks(), Printed.of(s)));
    Basis basis = Basis.of(cited);
    boolean control = stretch.loads().isEmpty();
    double draws =
        devices.stream()
            .mapToDouble(d -> DeviceLoads.leastRating(stretch.side(), d, tables))
            .max()
            .orElse(0);
    String small = words(tables);
    double made = gauge ? amps : Series.breakerUpTo(amps, tables).map(Cited::value).orElse(amps);
    boolean can = !Comparison.exceeds(draws, made);
    if (stretch.guard().isEmpty()) {
      byWire.run();
      return finding.todo(
          can
              ? "Put one device of at most %s on its mains side, or take %s."
                  .formatted(small, thicker)
              : "Take %s.".formatted(thicker),
          basis);
    }
    String guard = stretch.guard().map(Part::name).orElse("");
    if (control) {
      byWire.run();
      return finding.todo(
          "Put a device of at most %s for the control circuit where these wires leave %s%s, or take %s."
              .formatted(
                  small, guard, can ? ", or make %s as small".formatted(guard) : "", thicker),
          basis);
    }
    if (can) {
      finding.change(Stretch.rating(devices.get(0)), small);
    } else {
      byWire.run();
    }
    return finding.todo(
        can
            ? "Take a device of at most %s, or %s.".formatted(small, thicker)
            : "Take %s: %s cannot be smaller, its loads need %s."
                .formatted(thicker, guard, Printed.of(draws, Dimension.CURRENT)),
        basis);
  }
}
