package org.coilwright.rule;

import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Part;
import org.coilwright.rule.Outcome.Violated;

/** Whether two findings speak of the same thing. */
final class Places {
  private final Netlist netlist;

  Places(Netlist netlist) {
    this.netlist = netlist;
  }

  /**
   * True if the two share a wire, a device or a coil. A run or a load is only what they both hang
   * on, and does not join them; a load does where both are about it.
   */
  boolean meet(Violated one, Violated other) {
    return one.path().stream()
        .anyMatch(
            here ->
                other.path().stream()
                    .anyMatch(
                        there ->
                            areSame(here, there)
                                && !isRun(here)
                                && (!isLoad(here)
                                    || (isSubject(here, one) && isSubject(there, other)))));
  }

  /** {@code K1} of {@code K1.A1}. */
  static String partOf(String place) {
    int dot = place.indexOf('.');
    return dot < 0 ? place : place.substring(0, dot);
  }

  /** The same place, or a part and a pin of it; two different pins of one part are two places. */
  private static boolean areSame(String here, String there) {
    boolean partAndPin = here.indexOf('.') < 0 || there.indexOf('.') < 0;
    return here.equals(there) || (partAndPin && partOf(here).equals(partOf(there)));
  }

  private static boolean isSubject(String place, Violated finding) {
    return partOf(place).equals(partOf(finding.path().get(0)));
  }

  private boolean isRun(String place) {
    return netlist.runs().containsKey(place);
  }

  private boolean isLoad(String place) {
    Part part = netlist.parts().get(partOf(place));
    return part instanceof Part.Heater || part instanceof Part.OtherLoad;
  }

  /** True for the mains, which everything hangs on. */
  boolean isMains(String place) {
    return netlist.parts().get(partOf(place)) instanceof Part.Mains;
  }
}
