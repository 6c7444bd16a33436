package org.coilwright.behaviour;

import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;

/**
 * What came of a rehearsal. Energies in Wh.
 *
 * @param steps rows run
 * @param stepMillis milliseconds a row
 * @param runs each closing of the contact in order
 * @param closedSteps rows with the contact closed
 * @param pvWh generation
 * @param otherWh all load but the controlled one
 * @param loadWh the controlled load
 * @param importWh from the grid
 * @param exportWh to the grid
 * @param dischargeWh out of the battery
 * @param chargeWh into the battery
 * @param unusedSurplusWh exported while the contact was open and the water could still take heat
 * @param lowestFraction lowest battery level seen; 1 without a battery
 * @param endFraction battery level at the end
 * @param endCelsius water temperature at the end, if there is water
 * @param hottestCelsius highest water temperature seen, if there is water
 * @param targetStep row at which the water first reached its target
 */
public record Tally(
    long steps,
    int stepMillis,
    List<Run> runs,
    long closedSteps,
    double pvWh,
    double otherWh,
    double loadWh,
    double importWh,
    double exportWh,
    double dischargeWh,
    double chargeWh,
    double unusedSurplusWh,
    double lowestFraction,
    double endFraction,
    OptionalDouble endCelsius,
    OptionalDouble hottestCelsius,
    OptionalLong targetStep) {

  /** Closings that a person would call false. */
  public List<Run> falseStarts() {
    return runs.stream().filter(Run::falseStart).toList();
  }

  /** Closings a day, over the whole of what was run. */
  public double startsPerDay() {
    return runs.size() * 86_400_000.0 / (steps * (double) stepMillis);
  }
}
