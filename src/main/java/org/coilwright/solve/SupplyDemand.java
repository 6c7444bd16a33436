package org.coilwright.solve;

import java.util.List;

/** What coils and their companions ask of a control supply. */
public final class SupplyDemand {
  private SupplyDemand() {}

  /** Direct current of coils that are on together, A. */
  public static double amps(List<Double> coilAmps) {
    return coilAmps.stream().mapToDouble(Double::doubleValue).sum();
  }

  /** How many coils of {@code coilAmps} a supply of {@code limitAmps} carries. */
  public static int mostCoils(double limitAmps, double coilAmps) {
    return (int) Math.floor(limitAmps / coilAmps * (1 + 1e-12));
  }

  /**
   * Apparent power a control transformer gives for a short time: the coils that pull in together,
   * those that are held, and whatever else is on. Power factors are not weighed, which errs on the
   * safe side.
   *
   * @return VA
   */
  public static double shortTimeVoltAmperes(double pullingIn, double held, double others) {
    return pullingIn + held + others;
  }

  /** Voltage left on a resistance behind another one in series, V. */
  public static double dividedVolts(double volts, double loadOhms, double seriesOhms) {
    return volts * loadOhms / (loadOhms + seriesOhms);
  }

  /** Voltage that remains for the line: lowest supply less what the coil needs, V. */
  public static double leftForLine(double lowestSupply, double coilNeeds) {
    return lowestSupply - coilNeeds;
  }
}
