package org.coilwright.rules;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.coilwright.netlist.Part;

/**
 * What is left on a heater when these or those cut-outs have opened.
 *
 * @param thermostats those that may be stuck closed
 */
record CutOutTrial(
    Overheating heating, Part.Heater heater, VesselNeed need, List<Part.Thermal> thermostats) {

  /** What still heats it, or stays on it, in words; empty if these cut-outs are enough. */
  Optional<String> fault(List<Part.Thermal> cutOuts) {
    if (cutOuts.isEmpty()) {
      return Optional.of("with the thermostat stuck closed");
    }
    Optional<String> heats = heats(cutOuts);
    if (heats.isPresent() || need.isOpen()) {
      return heats.map(h -> "it is heated " + h);
    }
    return stays(cutOuts).map(l -> "%s stays on it".formatted(l));
  }

  /** A line that is left on it though nothing heats it any more. */
  Optional<Feeding.Side> lineLeft(List<Part.Thermal> cutOuts) {
    return heats(cutOuts).isPresent() ? Optional.empty() : stays(cutOuts);
  }

  /**
   * The first that does not surely open in time, one that alone stops this heater before others.
   *
   * @param surely those that do; not all of the others
   */
  Part.Thermal late(List<Part.Thermal> cutOuts, List<Part.Thermal> surely) {
    List<Part.Thermal> open = cutOuts.stream().filter(c -> !surely.contains(c)).toList();
    return open.stream()
        .filter(heating.stopping(true)::contains)
        .findFirst()
        .orElseGet(() -> open.get(0));
  }

  private Optional<String> heats(List<Part.Thermal> cutOuts) {
    return heating.heatingFault(cutOuts, thermostats);
  }

  private Optional<Feeding.Side> stays(List<Part.Thermal> cutOuts) {
    return heating.with(Overheating.names(cutOuts), Set.of()).all(Feeding.Kind.LINE).stream()
        .findFirst();
  }
}
