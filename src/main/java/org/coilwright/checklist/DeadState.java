package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.coilwright.circuit.Actuator;
import org.coilwright.circuit.Branch;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.solve.Probing;

/** What is done to a dead circuit before it is read, section by section. */
final class DeadState {
  private static final String N = "N";
  private final Anatomy anatomy;

  DeadState(Anatomy anatomy) {
    this.anatomy = anatomy;
  }

  /** Where the incoming neutral is off, so that its bond to earth is in no reading. */
  Set<String> neutralsOff() {
    Set<String> names = new LinkedHashSet<>();
    for (Part part : anatomy.netlist().parts().values()) {
      boolean supply = part instanceof Part.Mains || part instanceof Part.Source;
      if (supply && part.pins().contains(N) && anatomy.wired(part.name(), N)) {
        names.add(part.name());
      }
    }
    return names;
  }

  /** Thermostats and cut-outs that are closed when cold, brought to open. */
  Map<String, Boolean> opened() {
    Map<String, Boolean> opened = new LinkedHashMap<>();
    for (Part.Thermal thermal : anatomy.parts(Part.Thermal.class)) {
      if (thermal.form() == Part.ContactForm.NC) {
        opened.put(thermal.name(), false);
      }
    }
    return opened;
  }

  /** Every protective device on, every armature held in, for what the mains reaches. */
  Map<String, Boolean> heldIn() {
    Map<String, Boolean> held = new LinkedHashMap<>();
    for (Branch.Contact contact : anatomy.circuit().branches(Branch.Contact.class)) {
      Actuator actuator = contact.actuator();
      boolean moved =
          switch (actuator.kind()) {
            case PROTECTIVE, COIL, SWITCH -> true;
            case OUTPUT, THERMOSTAT, CUT_OUT -> false;
          };
      if (moved && anatomy.onMains(contact.from())) {
        held.put(actuator.name(), true);
      }
    }
    return held;
  }

  /** Pins of the protective conductor at loads that have one wired. */
  List<Terminal> earthedLoads() {
    List<Terminal> pins = new ArrayList<>();
    for (Part load : anatomy.loads()) {
      if (anatomy.wired(load.name(), Anatomy.PE)) {
        pins.add(new Terminal(load.name(), Anatomy.PE));
      }
    }
    return pins;
  }

  /** Read with the incoming neutral off. */
  Probing still(Probing probing) {
    return without(probing, neutralsOff());
  }

  /** Read with these parts unplugged too. */
  static Probing without(Probing probing, Set<String> parts) {
    Set<String> apart = new HashSet<>(probing.apart());
    apart.addAll(parts);
    return new Probing(
        probing.method(),
        probing.plus(),
        probing.minus(),
        probing.lifted(),
        apart,
        probing.operated(),
        probing.directed());
  }
}
