package org.coilwright.rules;

import java.util.Optional;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;
import org.coilwright.rule.Weight;

/**
 * Whether what a heater heats needs a cut-out that is reset by hand.
 *
 * @param isOpen true if it is known that water and steam can leave it
 * @param weight how heavy it is if there is none; empty if none is needed or it is not known
 * @param missing the key that would tell; empty if it is known
 * @param words why
 */
record VesselNeed(boolean isOpen, Optional<Weight> weight, Optional<String> missing, String words) {

  static VesselNeed of(Part.Heater heater) {
    String name = heater.name();
    Optional<Boolean> closed = heater.vessel().flatMap(Part.Vessel::closed).map(Written::value);
    if (closed.isEmpty()) {
      return new VesselNeed(
          false,
          Optional.empty(),
          Optional.of((heater.vessel().isEmpty() ? "vessel of " : "vessel.closed of ") + name),
          "Whether %s heats water in a closed vessel is not written; if it does, it needs a manually reset cut-out."
              .formatted(name));
    }
    return closed.get()
        ? needed(false, Weight.STOP, "%s heats a closed vessel".formatted(name))
        : ofOpen(name, heater.vessel().orElseThrow());
  }

  /** An open vessel boils over where nothing stops it: what the boiling water meets counts. */
  private static VesselNeed ofOpen(String name, Part.Vessel vessel) {
    Optional<String> cistern = vessel.cistern().map(Written::value);
    if (cistern.isEmpty()) {
      return unsaid(
          "vessel.cistern of " + name,
          "Whether what the boiling water of %s meets stands 100 °C is not written; if it does not, %s needs a manually reset cut-out."
              .formatted(name, name));
    }
    if (cistern.get().equals("plastic")) {
      return needed(
          true,
          Weight.FIX,
          "%s heats an open vessel with a cistern of plastic, which boiling water softens"
              .formatted(name));
    }
    Optional<Boolean> vent = vessel.openVent().map(Written::value);
    if (vent.isEmpty()) {
      return unsaid(
          "vessel.open-vent of " + name,
          "Whether an open vent leads the steam away from the vessel of %s is not written; if none does, it needs a manually reset cut-out."
              .formatted(name));
    }
    return vent.get()
        ? new VesselNeed(
            true,
            Optional.empty(),
            Optional.empty(),
            "%s heats an open vessel: if the thermostat sticks it boils, the vent leads the steam away and the metal stands it."
                .formatted(name))
        : needed(true, Weight.FIX, "%s heats an open vessel without an open vent".formatted(name));
  }

  private static VesselNeed needed(boolean isOpen, Weight weight, String words) {
    return new VesselNeed(isOpen, Optional.of(weight), Optional.empty(), words);
  }

  private static VesselNeed unsaid(String key, String words) {
    return new VesselNeed(true, Optional.empty(), Optional.of(key), words);
  }

  /** What stands under the caret. */
  String label() {
    return isOpen ? "an open vessel" : "a closed vessel";
  }
}
