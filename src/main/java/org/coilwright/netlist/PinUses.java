package org.coilwright.netlist;

import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Gathers the pins of one part, and sees to it that no pin has two uses. */
final class PinUses {
  private final Problems problems;
  private final Set<String> pins = new LinkedHashSet<>();
  private final Map<String, String> uses = new HashMap<>();

  PinUses(Problems problems) {
    this.problems = problems;
  }

  /** Pins that serve this alone. */
  void only(String use, List<Written<String>> written) {
    for (Written<String> pin : written) {
      String first = uses.putIfAbsent(pin.value(), use);
      if (first != null) {
        clash(pin, first, use);
      }
      pins.add(pin.value());
    }
  }

  /** Pins of a contact; contacts may share a pin with each other, but not with anything else. */
  void contact(List<Written<String>> written) {
    if (written.size() == 2 && written.get(0).value().equals(written.get(1).value())) {
      problems.add(
          written.get(1).mark(),
          "a contact has two different pins, and both are " + written.get(1).value(),
          "write the other pin");
    }
    for (Written<String> pin : written) {
      String first = uses.putIfAbsent(pin.value(), "a contact");
      if (first != null && !first.equals("a contact")) {
        clash(pin, first, "a contact");
      }
      pins.add(pin.value());
    }
  }

  List<String> pins() {
    return List.copyOf(pins);
  }

  private void clash(Written<String> pin, String first, String second) {
    String both = first.equals(second) ? "twice in " + first : "in " + first + " and in " + second;
    problems.add(pin.mark(), "pin " + pin.value() + " stands " + both, "give each pin one use");
  }
}
