package org.coilwright.behaviour;

/** What follows from the settings without a rehearsal, in closed form. Watts, seconds, Wh. */
public final class Forecast {
  private static final double SECONDS_PER_HOUR = 3600;

  /** No meter tells less than this from nothing, in watts. */
  private static final double SMALLEST_READING = 1;

  private static final double TIME_CONSTANTS_TO_SETTLE = 3;

  private Forecast() {}

  /**
   * The most by which a battery's power is wrong at the instant in which another load stops: all of
   * the load, but not more than the battery can go from giving to taking.
   */
  public static double overshootWatts(double stepWatts, Battery battery) {
    return Math.min(stepWatts, battery.dischargeWatts() + battery.chargeWatts());
  }

  /**
   * How long what a battery gives too much stays above a threshold, by whichever of the two ways of
   * settling takes longer.
   *
   * @param watts too much at first
   * @param above the threshold; less than one watt counts as one watt
   * @param settlesIn the battery's settling time
   */
  public static double secondsAbove(double watts, double above, double settlesIn) {
    double share = Math.max(above, SMALLEST_READING) / watts;
    if (!(watts > 0) || share >= 1) {
      return 0;
    }
    double ramp = settlesIn * (1 - share);
    double firstOrder = -settlesIn / TIME_CONSTANTS_TO_SETTLE * Math.log(share);
    return Math.max(ramp, firstOrder);
  }

  /** Seconds to heat the water from cold to its target without losses: m c ΔT / P. */
  public static double heatingSeconds(Water water, double watts) {
    return water.joulesPerKelvin() * (water.targetCelsius() - water.startCelsius()) / watts;
  }

  /** Energy to heat the water from cold to its target, Wh. */
  public static double heatingWh(Water water) {
    return water.joulesPerKelvin()
        * (water.targetCelsius() - water.startCelsius())
        / SECONDS_PER_HOUR;
  }

  /** Most that one shortest run takes out of the battery, if the sun is gone once it has begun. */
  public static double drainWh(Battery battery, double loadWatts, double shortestRunSeconds) {
    return wattHours(Math.min(loadWatts, battery.dischargeWatts()), shortestRunSeconds);
  }

  /** Energy of a power over a time, Wh. */
  public static double wattHours(double watts, double seconds) {
    return watts * seconds / SECONDS_PER_HOUR;
  }

  /** What lies between the level at which the settings stop and the battery's floor, Wh. */
  public static double reserveWh(Battery battery, double stopFraction) {
    return Math.max(0, stopFraction - battery.floorFraction()) * battery.capacityWh();
  }

  /**
   * Import that stays once the contact has closed on the least surplus that closes it and the
   * battery has settled; negative if there is still export. A battery helps with all it gives if
   * the settings stop above its floor. Otherwise it may be empty, and helps with no more than the
   * charging that it gives up.
   */
  public static double lastingImport(Settings settings, Plant plant) {
    double shortfall = plant.loadWatts() - settings.exportAboveWatts().orElse(0);
    return shortfall - plant.battery().map(b -> help(settings, b)).orElse(0.0);
  }

  private static double help(Settings settings, Battery battery) {
    boolean keepsReserve = settings.batteryBelowFraction().orElse(0) > battery.floorFraction();
    return keepsReserve
        ? battery.dischargeWatts()
        : Math.min(battery.chargeWatts(), battery.dischargeWatts());
  }

  /**
   * Seconds for which the contact's own load shows as import above the stop threshold while the
   * battery takes it over; 0 without a battery.
   */
  public static double passingImportSeconds(Settings settings, Plant plant) {
    double shortfall = plant.loadWatts() - settings.exportAboveWatts().orElse(0);
    double above = settings.importAboveWatts().orElse(Double.POSITIVE_INFINITY);
    return plant.battery().map(b -> passing(b, shortfall, above)).orElse(0.0);
  }

  private static double passing(Battery battery, double shortfall, double above) {
    double takenOver = Math.min(shortfall, battery.dischargeWatts());
    double left = shortfall - takenOver;
    return left > above ? 0 : secondsAbove(takenOver, above - left, battery.settlesInSeconds());
  }

  /** True if the contact opens again by itself although the surplus that closed it goes on. */
  public static boolean opensByItself(Settings settings, Plant plant) {
    if (settings.importAboveWatts().isEmpty()) {
      return false;
    }
    double waits = Math.max(settings.stopAfterSeconds(), settings.shortestRunSeconds());
    return lastingImport(settings, plant) > settings.importAboveWatts().getAsDouble()
        || passingImportSeconds(settings, plant) > waits;
  }
}
