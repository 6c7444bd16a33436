package org.coilwright.solve;

import java.util.List;
import java.util.Map;
import org.coilwright.circuit.Branch;

/** Something the states show that no circuit should do. */
public sealed interface Trouble {
  /** Independent contacts' positions in which it is seen. */
  Map<String, Boolean> positions();

  /** A source has a path with no load in it. */
  record ShortCircuit(Map<String, Boolean> positions, String source, Branch.Path path, double amps)
      implements Trouble {}

  /** The relays named never come to rest. */
  record NoSteadyState(Map<String, Boolean> positions, List<String> relays) implements Trouble {}

  /**
   * The relays named are in or out depending on what was before.
   *
   * @param race true if the same start leads to both, whichever relay is faster
   */
  record TwoSteadyStates(
      Map<String, Boolean> positions, List<String> relays, State first, State second, boolean race)
      implements Trouble {}

  /** A coil or load gets current through another coil or load. */
  record SneakPath(
      Map<String, Boolean> positions, String victim, String through, Branch.Path path, double volts)
      implements Trouble {}

  /** Something that keeps positions, or what is read in them, from being known. */
  sealed interface Gap extends Trouble {
    /** The contacts, relays or one-way elements it is about. */
    List<String> names();
  }

  /**
   * A group with more independent contacts than are explored, or whose relays may move in more
   * orders than are followed.
   *
   * @param contacts names of the contacts; where it is the orders, of the relays
   * @param orders true if it is the orders
   */
  record NotExplored(
      Map<String, Boolean> positions, List<String> contacts, int limit, boolean orders)
      implements Gap {
    @Override
    public List<String> names() {
      return contacts;
    }
  }

  /**
   * No choice of which one-way elements conduct agrees with itself, so that no voltage beside them
   * is known.
   *
   * @param positions in which it is seen; empty if it is seen only while armatures move
   * @param diodes designations of the parts that are or hold one-way elements
   */
  record NotSolved(Map<String, Boolean> positions, List<String> diodes) implements Gap {
    @Override
    public List<String> names() {
      return diodes;
    }
  }

  /** Pins with no reference: their voltage cannot be told. */
  record Floating(Map<String, Boolean> positions, List<String> pins) implements Trouble {}
}
