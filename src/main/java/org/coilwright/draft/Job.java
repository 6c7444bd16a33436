package org.coilwright.draft;

import java.util.List;
import java.util.Optional;
import org.coilwright.netlist.Brief;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Quantity;

/**
 * A brief with every gap filled: by a usual figure, which is then among the assumptions, or left
 * open, which is then said.
 *
 * @param brief what was written
 * @param nec true for the practice of that name
 * @param phases {@code 1}, {@code 3} or {@code split}
 * @param mains the mains as a netlist has them
 * @param mainsVolts as a netlist has it, with tolerance
 * @param mainsVoltage the same as a value
 * @param power of the load
 * @param volts rated voltage of the load, V
 * @param connection how its elements are joined
 * @param lines lines that feed it: 1, 2 or 3
 * @param neutral true if its neutral comes along with them
 * @param supply the controller's auxiliary supply
 * @param coilVolts of the direct control circuit, V
 * @param controlVolts of the mains control circuit, V
 * @param contact the controller's contact
 * @param boardToBox m, one way
 * @param boxToLoad m, one way
 * @param controllerToBox m, one way
 * @param air around the devices
 * @param assumed what was taken because it is not written
 * @param open what stays open because it is not written
 */
record Job(
    Brief brief,
    boolean nec,
    String phases,
    String mains,
    String mainsVolts,
    Quantity mainsVoltage,
    Quantity power,
    double volts,
    String connection,
    int lines,
    boolean neutral,
    Optional<Supply> supply,
    double coilVolts,
    double controlVolts,
    ContactWords.Understood contact,
    double boardToBox,
    double boxToLoad,
    double controllerToBox,
    Quantity air,
    List<String> assumed,
    List<String> open) {

  /**
   * The controller's auxiliary supply.
   *
   * @param volts as a netlist has it, with tolerance
   * @param limit A
   * @param isolation how it is kept apart from the mains
   */
  record Supply(String volts, double limit, String isolation) {}

  /** True for mains of several lines, of which the load uses them all. */
  boolean isThree() {
    return lines == 3;
  }

  /** °C around the devices at most. */
  double warmest() {
    return air.high();
  }

  /** What feeds the circuit when the mains fail, as a netlist has it; empty if it is not known. */
  Optional<String> island() {
    return brief
        .word("island")
        .map(Written::value)
        .or(
            () ->
                brief.hasGroup("island")
                    ? Optional.of(brief.yaml("island", key -> true))
                    : Optional.empty());
  }

  /** m of wire from the board to the load. */
  double boardToLoad() {
    return boardToBox + boxToLoad;
  }
}
