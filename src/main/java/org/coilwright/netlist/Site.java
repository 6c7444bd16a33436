package org.coilwright.netlist;

import java.util.List;
import java.util.Optional;
import org.coilwright.quantity.Quantity;
import org.coilwright.quantity.Worded;

/**
 * Where the circuit stands.
 *
 * @param mark of the {@code site} key
 */
public record Site(
    Mark mark,
    Optional<MainsSupply> mains,
    Optional<Island> island,
    Optional<Written<Quantity>> enclosureAir,
    Optional<Written<Quantity>> ambient,
    Optional<Enclosure> enclosure,
    Optional<Written<Quantity>> altitude,
    Written<Practice> practice) {

  /** Which set of cited tables applies. */
  public enum Practice implements Worded {
    IEC,
    NEC
  }

  /** How many lines the mains has. */
  public enum Phases implements Worded {
    ONE("1"),
    THREE("3"),
    SPLIT("split");

    private final String word;

    Phases(String word) {
      this.word = word;
    }

    @Override
    public String word() {
      return word;
    }
  }

  /** How a box stands. */
  public enum BoxMounting implements Worded {
    WALL,
    FREE_STANDING,
    RECESSED
  }

  /** Openings of a box for air. */
  public enum Vents implements Worded {
    NONE,
    PRESENT
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

  /**
   * What feeds the circuit when the mains fail.
   *
   * @param exists false for {@code island: none}; nothing else is written then
   * @param ratedCurrent in each line, lasting
   * @param faultCurrent the most its source gives into a short-circuit
   * @param lasts how long it gives that
   * @param neutralBond {@code by-inverter}, {@code fixed} or {@code none}
   * @param electrode resistance of the site's own earth electrode
   * @param feeds parts behind which it feeds; everything if there is none
   */
  public record Island(
      Mark mark,
      boolean exists,
      Optional<Written<Quantity>> ratedCurrent,
      Optional<Written<Quantity>> faultCurrent,
      Optional<Written<Quantity>> lasts,
      Optional<Written<String>> neutralBond,
      Optional<Written<Quantity>> electrode,
      List<Written<String>> feeds) {}

  /** The box the devices sit in. */
  public record Enclosure(
      Mark mark,
      Optional<Written<Quantity>> width,
      Optional<Written<Quantity>> height,
      Optional<Written<Quantity>> depth,
      Optional<Written<BoxMounting>> mounting,
      Optional<Written<Vents>> vents) {}
}
