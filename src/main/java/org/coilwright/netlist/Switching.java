package org.coilwright.netlist;

import java.util.List;
import java.util.Optional;
import org.coilwright.quantity.Quantity;

/** The settings that decide when the controlled contact closes, and the plant they act on. */
public record Switching(
    Mark mark,
    Optional<Written<String>> output,
    Optional<Start> start,
    Optional<Stop> stop,
    Optional<Written<Quantity>> shortestRun,
    Optional<Written<Quantity>> longestPerDay,
    List<Written<String>> alwaysOn,
    Optional<Plant> plant,
    Optional<Water> water) {

  /** Start when the surplus has lasted. */
  public record Start(
      Mark mark, Optional<Written<Quantity>> exportAbove, Optional<Written<Quantity>> confirm) {}

  /** Stop on import that lasts, or on a low battery. */
  public record Stop(
      Mark mark,
      Optional<Written<Quantity>> importAbove,
      Optional<Written<Quantity>> confirm,
      Optional<Written<Quantity>> batteryBelow) {}

  /** What the settings act on. */
  public record Plant(
      Mark mark,
      Optional<Written<Quantity>> pvPeak,
      Optional<Written<Quantity>> baseLoad,
      Optional<Written<Quantity>> largestStep,
      Optional<Battery> battery) {}

  /** The battery. */
  public record Battery(
      Mark mark,
      Optional<Written<Quantity>> capacity,
      Optional<Written<Quantity>> discharge,
      Optional<Written<Quantity>> charge,
      Optional<Written<Quantity>> settlesIn,
      Optional<Written<Quantity>> floor,
      Optional<Written<String>> settles) {}

  /** The water to be heated. */
  public record Water(
      Mark mark,
      Optional<Written<Quantity>> litres,
      Optional<Written<Quantity>> from,
      Optional<Written<Quantity>> to) {}
}
