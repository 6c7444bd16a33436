package org.coilwright.cli;

import java.util.Collection;
import java.util.List;
import org.coilwright.netlist.NearNames;
import org.coilwright.quantity.Words;

/** Asks whether another name was meant; never takes it unasked. */
final class Near {
  /** With more than these, none is the one that was meant. */
  private static final int MOST = 3;

  private Near() {}

  /** {@code Did you mean X?} with a leading blank, or nothing. */
  static String question(String typed, Collection<String> names) {
    List<String> near = to(typed, names);
    return near.isEmpty() ? "" : " Did you mean " + Words.either(near) + "?";
  }

  /** The names that may have been meant; none if there are too many. */
  static List<String> to(String typed, Collection<String> names) {
    List<String> near = NearNames.nearest(typed, names);
    return near.size() > MOST ? List.of() : near;
  }
}
