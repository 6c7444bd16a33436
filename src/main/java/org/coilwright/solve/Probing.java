package org.coilwright.solve;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.coilwright.netlist.Terminal;

/**
 * Something measured on a circuit that is switched off: where the leads go, and what is done to the
 * circuit first. Protective devices are off, contacts as they are when nothing moves them, unless
 * {@code operated} says otherwise.
 *
 * @param plus pins under the positive lead, joined if there are several
 * @param minus pins under the other lead, likewise
 * @param lifted pins from which every wire is taken, whichever wire that is
 * @param apart parts that are unplugged; their wires stay on the plug
 * @param operated actuator to the position it is brought into by hand: a protective device switched
 *     on, an armature held in, a switch operated; a thermostat or cut-out that has opened is false
 * @param directed whether it is said which lead goes where; if not, either may be the positive one
 */
public record Probing(
    Method method,
    List<Terminal> plus,
    List<Terminal> minus,
    Set<Terminal> lifted,
    Set<String> apart,
    Map<String, Boolean> operated,
    boolean directed) {
  /** What is read. */
  public enum Method {
    /** Resistance, by a direct voltage too small to count as one. */
    OHMS,
    /** The volts that a small current leaves on a diode. */
    DIODE,
    /** Resistance at a test voltage, suppressors joined out. */
    INSULATION
  }

  /** Copies everything. */
  public Probing {
    plus = List.copyOf(plus);
    minus = List.copyOf(minus);
    lifted = Set.copyOf(lifted);
    apart = Set.copyOf(apart);
    operated = Map.copyOf(operated);
  }

  /** Ohms between two pins, nothing done to the circuit. */
  public static Probing ohms(Terminal plus, Terminal minus) {
    return new Probing(
        Method.OHMS, List.of(plus), List.of(minus), Set.of(), Set.of(), Map.of(), false);
  }

  /** The same with wires lifted. */
  public Probing lifting(Set<Terminal> pins) {
    return new Probing(method, plus, minus, pins, apart, operated, directed);
  }

  /** The same with one part unplugged. */
  public Probing parting(String part) {
    return new Probing(method, plus, minus, lifted, Set.of(part), operated, directed);
  }

  /** The same with actuators in other positions. */
  public Probing operating(Map<String, Boolean> positions) {
    return new Probing(method, plus, minus, lifted, apart, positions, directed);
  }

  /** The same, the positive lead where it is said to be. */
  public Probing toward() {
    return new Probing(method, plus, minus, lifted, apart, operated, true);
  }

  /** The same with the leads exchanged. */
  public Probing exchanged() {
    return new Probing(
        method, /* plus= */ minus, /* minus= */ plus, lifted, apart, operated, directed);
  }
}
