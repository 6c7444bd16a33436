package org.coilwright.solve;

/**
 * What is certain about an armature at a coil voltage, as shares of the rated voltage.
 *
 * @param operate from here up an open armature surely closes
 * @param holds above this a closed one surely stays
 * @param release below this it surely opens; {@code release <= holds <= operate <= highest}
 * @param highest up to here the coil may be on for ever
 */
public record ArmatureBand(double operate, double holds, double release, double highest) {
  /** What the armature does. */
  public enum Position {
    CLOSED,
    HELD,
    OPEN,
    /** Neither is certain: it may chatter, and an AC coil then draws its pick-up current. */
    UNDECIDED,
    TOO_HIGH
  }

  /**
   * Position at a voltage.
   *
   * @param share coil voltage over rated voltage
   * @param closedBefore whether it was closed when the voltage came to this
   */
  public Position at(double share, boolean closedBefore) {
    if (share > highest) {
      return Position.TOO_HIGH;
    }
    if (share < release) {
      return Position.OPEN;
    }
    if (closedBefore) {
      return share > holds ? Position.HELD : Position.UNDECIDED;
    }
    return share >= operate ? Position.CLOSED : Position.UNDECIDED;
  }
}
