package org.coilwright.solve;

import java.util.List;
import org.coilwright.netlist.Mark;

/**
 * One thing broken.
 *
 * @param kind how
 * @param at ids of the branches it happens to, or the pins it joins
 * @param mark where the first of them is written
 * @param inWords what happens, for a person: {@code K1.11-14 welds}
 * @param remark what is written that should keep it from happening; may be empty
 */
public record Fault(Kind kind, List<String> at, Mark mark, String inWords, String remark) {
  /** A fault that nothing written speaks against. */
  public Fault(Kind kind, List<String> at, Mark mark, String inWords) {
    this(kind, at, mark, inWords, "");
  }

  /** How a thing breaks. */
  public enum Kind {
    /** A contact stays closed whatever moves it. */
    CONTACT_WELDS,
    /** A contact stays open whatever moves it. */
    CONTACT_NEVER_CLOSES,
    /** A relay's armature stays pulled in, with all its contacts. */
    ARMATURE_STICKS,
    COIL_OPEN,
    COIL_SHORTED,
    WIRE_BROKEN,
    /** Two cores of one run touch. */
    CORES_JOINED,
    /** A control conductor touches earth. */
    EARTHED,
    SUPPLY_LOST,
    /** A supply at the top of its tolerance. */
    SUPPLY_AT_TOP,
    SUPPRESSOR_OPEN,
    SUPPRESSOR_SHORTED,
    /** A fuse, breaker or residual-current device that does not open when it should. */
    PROTECTION_STUCK,
    /** A relay's insulation between coil and contacts breaks down. */
    INSULATION_FAILED
  }
}
