package org.coilwright.rules;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Quantity;
import org.coilwright.solve.Study;

/** The voltage of sources: where it is written, and how far it may rise and sag. */
final class SourceVolts {
  private SourceVolts() {}

  /** Where a source's voltage is written. */
  static Mark mark(Study study, Source source) {
    if (source.isDirect()) {
      return source
          .output()
          .flatMap(Part.DcOutput::voltage)
          .map(Written::mark)
          .orElse(source.mark());
    }
    return study
        .circuit()
        .netlist()
        .site()
        .mains()
        .map(mains -> mains.voltage().mark())
        .orElse(source.mark());
  }

  /** Highest over nominal voltage of the source that feeds the coil; 1 if it has no tolerance. */
  static double rise(List<Source> sources) {
    return sources.stream()
        .flatMap(s -> s.volts().stream())
        .filter(v -> v.nominal() > 0)
        .mapToDouble(v -> v.high() / v.nominal())
        .max()
        .orElse(1);
  }

  /** Lowest over nominal voltage of the source that feeds the coil; 1 if it has no tolerance. */
  static double sag(List<Source> sources) {
    return sources.stream()
        .flatMap(s -> s.volts().stream())
        .filter(v -> v.nominal() > 0)
        .mapToDouble(v -> v.low() / v.nominal())
        .min()
        .orElse(1);
  }

  /** Nominal volts between two lines of one mains; empty if those to neutral are not written. */
  static Optional<Double> between(Source one, Source other) {
    return one.volts()
        .map(Quantity::nominal)
        .flatMap(
            a ->
                other
                    .volts()
                    .map(b -> distance(a, one.phaseDegrees(), b.nominal(), other.phaseDegrees())));
  }

  /** Between the tips of two pointers. */
  private static double distance(double a, OptionalInt angleOfA, double b, OptionalInt angleOfB) {
    double alpha = Math.toRadians(angleOfA.orElse(0));
    double beta = Math.toRadians(angleOfB.orElse(0));
    return Math.hypot(
        a * Math.cos(alpha) - b * Math.cos(beta), a * Math.sin(alpha) - b * Math.sin(beta));
  }
}
