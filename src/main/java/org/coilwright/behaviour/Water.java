package org.coilwright.behaviour;

import java.util.List;

/**
 * The water that the load heats, as one well-mixed mass.
 *
 * @param litres volume; a litre counts as a kilogram
 * @param startCelsius temperature at the beginning
 * @param targetCelsius the thermostat opens here
 * @param differentialKelvin it closes again this much lower; above 0
 * @param lossWattsPerKelvin standing loss; 0 or more
 * @param roomCelsius air around the vessel
 * @param drawOffs water taken each day
 * @param heatCapacity J/(kg K), a cited value
 */
public record Water(
    double litres,
    double startCelsius,
    double targetCelsius,
    double differentialKelvin,
    double lossWattsPerKelvin,
    double roomCelsius,
    List<DrawOff> drawOffs,
    double heatCapacity) {

  /**
   * Water that leaves the vessel and is made up with cold water, mixed at once.
   *
   * @param secondOfDay 0 to 86399
   * @param litres not more than the vessel holds
   * @param coldCelsius temperature of what flows in
   */
  public record DrawOff(int secondOfDay, double litres, double coldCelsius) {}

  /** Joules per kelvin of the whole mass. */
  double joulesPerKelvin() {
    return litres * heatCapacity;
  }
}
