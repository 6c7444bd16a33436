package org.coilwright.solve;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/**
 * Distances that reinforced insulation between mains and an extra-low voltage circuit needs, in
 * equipment of a fixed installation (overvoltage category III), after IEC 60664-1.
 */
public final class InsulationDistances {
  private static final double METRES_PER_MILLIMETRE = 1e-3;

  private final Tables tables;

  public InsulationDistances(Tables tables) {
    this.tables = tables;
  }

  /**
   * A distance and the figures it comes from.
   *
   * @param metres in m
   */
  public record Distance(double metres, List<Cited<Double>> from) {}

  /** How dirty it gets between the parts: what the creepage distance depends on. */
  public enum Pollution {
    /** Dry dust that condensation seldom wets: inside a tight enclosure. */
    DEGREE_2("pd2"),
    /** Conducting dust, or dust that condensation wets: switchgear as a component. */
    DEGREE_3("pd3");

    private final String column;

    Pollution(String column) {
      this.column = column;
    }
  }

  /**
   * Rated impulse voltage in overvoltage category III, kV; empty outside the table.
   *
   * @param lineToEarth nominal, V
   */
  public Optional<Cited<Double>> impulseKilovolts(double lineToEarth) {
    return tables.lookup("rated-impulse-voltage", Map.of(), lineToEarth, "III");
  }

  /** Factor on clearances, 1 up to 2000 m; empty above the table. */
  public Optional<Cited<Double>> altitudeFactor(double metres) {
    return tables.lookup("clearance-altitude", Map.of(), Math.max(0, metres), "factor");
  }

  /**
   * Clearance of reinforced insulation: that of the next impulse step, corrected for altitude.
   *
   * @param lineToEarth nominal, V
   * @param altitude above sea level, m
   */
  public Optional<Distance> reinforcedClearance(double lineToEarth, double altitude) {
    Optional<Cited<Double>> step =
        tables.lookup("rated-impulse-voltage", Map.of(), lineToEarth, "III-next");
    Optional<Cited<Double>> atSeaLevel =
        step.flatMap(
            kilovolts ->
                tables.lookup("clearance", Map.of(), kilovolts.value(), Pollution.DEGREE_3.column));
    Optional<Cited<Double>> factor = altitudeFactor(altitude);
    if (step.isEmpty() || atSeaLevel.isEmpty() || factor.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Distance(
            atSeaLevel.get().value() * factor.get().value() * METRES_PER_MILLIMETRE,
            List.of(atSeaLevel.get(), step.get(), factor.get())));
  }

  /**
   * Creepage distance of reinforced insulation: twice that of basic insulation, and never less than
   * the clearance.
   *
   * @param lineToEarth nominal, V
   * @param altitude above sea level, m
   */
  public Optional<Distance> reinforcedCreepage(
      double lineToEarth, double altitude, Pollution pollution) {
    Optional<Cited<Double>> basic =
        tables.lookup("creepage", Map.of(), lineToEarth, pollution.column);
    Optional<Distance> clearance = reinforcedClearance(lineToEarth, altitude);
    if (basic.isEmpty() || clearance.isEmpty()) {
      return Optional.empty();
    }
    Cited<Double> multiple = tables.figure("separation.reinforced-creepage-multiple");
    double twice = basic.get().value() * multiple.value() * METRES_PER_MILLIMETRE;
    return Optional.of(
        twice >= clearance.get().metres()
            ? new Distance(twice, List.of(basic.get(), multiple))
            : clearance.get());
  }
}
