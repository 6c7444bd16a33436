package org.coilwright.sizing;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.sizing.Factor.Cause;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/**
 * What lowers the current a power contact may carry.
 *
 * @param air around it, °C
 * @param ratedAir °C up to which its rating holds; empty: the standard's normal air
 * @param closeMounted true for side by side without a gap
 * @param altitude m; empty: taken as within the normal service conditions
 * @param hertz mains frequency; 0 for direct current
 * @param parallel poles of one device that share the current
 */
public record ContactConditions(
    double air,
    OptionalDouble ratedAir,
    boolean closeMounted,
    OptionalDouble altitude,
    double hertz,
    int parallel) {

  /** The factors, or the first of them that no table gives. */
  public Found<List<Factor>> factors(Tables tables) {
    List<Factor> factors = new ArrayList<>();
    if (parallel > 1) {
      Optional<Cited<Double>> poles = tables.lookup("parallel-poles", Map.of(), parallel, "factor");
      if (poles.isEmpty() || hertz == 0) {
        return new Found.Unknown<>(
            "%s poles in parallel".formatted(parallel),
            "No table says what %s poles in parallel carry%s."
                .formatted(parallel, hertz == 0 ? " on direct current" : ""));
      }
      factors.add(new Factor(Cause.PARALLEL_POLES, poles.get(), parallel + " poles in parallel"));
    }
    Found<Optional<Factor>> warm = warm(tables);
    if (warm instanceof Found.Unknown<Optional<Factor>> u) {
      return new Found.Unknown<>(u.missing(), u.why());
    }
    warm.known().flatMap(f -> f).ifPresent(factors::add);
    if (closeMounted) {
      factors.add(
          new Factor(Cause.CLOSE_MOUNTED, tables.figure("sizing.close-mounted"), "close-mounted"));
    }
    if (altitude.isPresent() && altitude.getAsDouble() > tables.figure("sizing.altitude").value()) {
      Optional<Cited<Double>> thin =
          tables.lookup("contact-altitude", Map.of(), altitude.getAsDouble(), "current");
      String metres = Printed.of(altitude.getAsDouble(), Dimension.LENGTH);
      if (thin.isEmpty()) {
        return new Found.Unknown<>(
            "%s above the sea".formatted(metres),
            "The table of thin air ends below %s.".formatted(metres));
      }
      if (thin.get().value() < 1) {
        factors.add(new Factor(Cause.ALTITUDE, thin.get(), metres + " above the sea"));
      }
    }
    if (hertz > 0 && tables.lookup("contact-frequency", Map.of(), hertz, "factor").isEmpty()) {
      return new Found.Unknown<>(
          Printed.of(hertz, Dimension.FREQUENCY), "Contactors are rated for 50 and 60 Hz.");
    }
    return new Found.Known<>(List.copyOf(factors));
  }

  private Found<Optional<Factor>> warm(Tables tables) {
    Cited<Double> normal = tables.figure("sizing.rated-air");
    double rated = ratedAir.orElse(normal.value());
    if (air <= rated) {
      return new Found.Known<>(Optional.empty());
    }
    Optional<Cited<Double>> factor = tables.lookup("contact-air", Map.of(), air - rated, "factor");
    String at = "air at " + Printed.of(air, Dimension.TEMPERATURE);
    if (factor.isEmpty()) {
      return new Found.Unknown<>(
          at,
          "Its rating holds to %s, and the table of warm air ends below %s."
              .formatted(
                  Printed.of(rated, Dimension.TEMPERATURE),
                  Printed.of(air, Dimension.TEMPERATURE)));
    }
    // the rule was read for devices rated at 40 °C; moved to another start it is practice
    Cited<Double> found = factor.get();
    Cited<Double> cited =
        rated == normal.value()
            ? found
            : new Cited<>(
                found.value(),
                found.source(),
                found.place(),
                found.standing().weaker(Standing.COMMON_PRACTICE));
    return new Found.Known<>(Optional.of(new Factor(Cause.AIR, cited, at)));
  }
}
