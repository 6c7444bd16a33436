package org.coilwright.behaviour;

/**
 * One closing of the contact, from start to stop.
 *
 * @param startStep row at which the contact closed
 * @param endStep first row at which it was open again, or the number of rows if it never opened
 * @param byWindow true if a fixed window closed it
 * @param falseStart true if no row of the confirm time had true surplus
 * @param pvWh what the load took from generation that nobody else needed
 * @param batteryWh what it took from the battery
 * @param gridWh what it took from the grid
 */
public record Run(
    long startStep,
    long endStep,
    boolean byWindow,
    boolean falseStart,
    double pvWh,
    double batteryWh,
    double gridWh) {
  /** All the energy the load took in this run. */
  public double wattHours() {
    return pvWh + batteryWh + gridWh;
  }

  /** What the load took from the battery and the grid, Wh. */
  public double foreignWh() {
    return batteryWh + gridWh;
  }
}
