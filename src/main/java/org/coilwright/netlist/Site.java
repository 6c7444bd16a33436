package org.coilwright.netlist;

import java.util.Optional;
import org.coilwright.quantity.Quantity;

/**
 * Where the circuit stands.
 *
 * @param mark of the {@code site} key
 */
public record Site(
    Mark mark,
    Optional<MainsSupply> mains,
    Optional<Written<Quantity>> enclosureAir,
    Optional<Written<Quantity>> ambient,
    Optional<Enclosure> enclosure,
    Optional<Written<Quantity>> altitude,
    Written<Practice> practice) {

  /** Which set of cited tables applies. */
  public enum Practice {
    IEC,
    NEC
  }

  /** How many lines the mains has. */
  public enum Phases {
    ONE,
    SPLIT,
    THREE
  }

  /**
   * The mains. {@code voltage} is line to neutral for one phase, line to line for three phases; for
   * {@code split} it is line to line (240 V of {@code 120/240 V}).
   */
  public record MainsSupply(
      Mark mark,
      Written<Phases> phases,
      Written<Quantity> voltage,
      Optional<Written<Quantity>> frequency,
      Optional<Written<String>> earthing,
      Optional<Written<Quantity>> faultCurrent,
      Optional<Written<Quantity>> loopImpedance) {}

  /** The box the devices sit in. */
  public record Enclosure(
      Mark mark,
      Optional<Written<Quantity>> width,
      Optional<Written<Quantity>> height,
      Optional<Written<Quantity>> depth,
      Optional<Written<String>> mounting,
      Optional<Written<String>> vents) {}
}
