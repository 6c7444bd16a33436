package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.coilwright.circuit.Branch.Coil;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.rules.Feeding.Kind;

/**
 * Something that takes current from the mains: a load, a coil, the mains input of a controller or a
 * supply.
 *
 * @param pins the nodes it hangs on, in their order, its protective conductor left out; of a mains
 *     input the line's first
 */
record MainsConsumer(String name, Mark mark, List<Node> pins) {
  /** Every one, loads first, whether the mains reach it or not. */
  static List<MainsConsumer> all(Circuit circuit) {
    List<MainsConsumer> all = new ArrayList<>();
    for (Part load : Loads.of(circuit)) {
      all.add(
          new MainsConsumer(
              load.name(), load.head().mark(), List.copyOf(circuit.outerNodesOf(load.name()))));
    }
    for (Coil coil : circuit.branches(Coil.class)) {
      all.add(new MainsConsumer(coil.part(), coil.mark(), List.of(coil.from(), coil.to())));
    }
    for (Part part : circuit.netlist().parts().values()) {
      Part.inputOf(part)
          .map(
              in ->
                  new MainsConsumer(
                      part.name(),
                      in.mark(),
                      in.pins().stream()
                          // the protective conductor returns nothing
                          .filter(p -> !p.equals(Earthing.PE))
                          .flatMap(p -> circuit.find(new Terminal(part.name(), p)).stream())
                          .toList()))
          .ifPresent(all::add);
    }
    return List.copyOf(all);
  }

  /** The pins that some side of the mains reaches. */
  List<Node> fed(Feeding feeding) {
    return pins.stream().filter(pin -> isOnMains(feeding, pin)).toList();
  }

  /** True if a line or neutral reaches a node. */
  static boolean isOnMains(Feeding feeding, Node pin) {
    return kinds(feeding, pin).anyMatch(k -> k == Kind.LINE || k == Kind.NEUTRAL);
  }

  /** True if the neutral reaches it and no line. */
  static boolean isNeutral(Feeding feeding, Node pin) {
    return kinds(feeding, pin).anyMatch(k -> k == Kind.NEUTRAL) && !isLine(feeding, pin);
  }

  /** True if a line reaches it. */
  static boolean isLine(Feeding feeding, Node pin) {
    return kinds(feeding, pin).anyMatch(k -> k == Kind.LINE);
  }

  private static Stream<Kind> kinds(Feeding feeding, Node pin) {
    return feeding.at(pin).stream().map(Feeding.Side::kind);
  }
}
