package org.coilwright.sweep;

import java.util.List;
import java.util.Set;

/**
 * A circuit with one mistake in it.
 *
 * @param circuit name of the circuit it was made from
 * @param what the mistake in a few words, by which the mutant is known
 * @param lines the netlist with the mistake
 * @param touched the pins, parts and runs that the mistake touched
 * @param places the lines in the file that it touched, the first line being 1
 */
record Mutant(
    String circuit,
    Kind kind,
    String what,
    List<String> lines,
    Set<String> touched,
    Set<Integer> places) {

  /** What sort of mistake it is. */
  enum Kind {
    /** One end of a wire on another pin. */
    MOVED,
    /** A wire left out. */
    LEFT_OUT,
    /** Two ends of wires at one part, or both ends at a load, exchanged. */
    EXCHANGED,
    /** A pole or contact bridged by a wire. */
    BRIDGED,
    /** One wire too many. */
    ADDED,
    /** A value written wrongly, or not at all. */
    VALUE;

    /** True for mistakes in the wiring. */
    boolean isWiring() {
      return this != VALUE;
    }
  }

  /** What it goes by. */
  String name() {
    return circuit + ": " + what;
  }

  /** The netlist with the mistake, as a file holds it. */
  String text() {
    return String.join("\n", lines) + "\n";
  }
}
