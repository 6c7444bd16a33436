package org.coilwright.rules;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Branch.DiodeBranch;
import org.coilwright.circuit.Branch.LoadElement;
import org.coilwright.circuit.Branch.Passive;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.solve.Study;

/**
 * Where the neutral ends and the protective conductor begins, with every contact closed. Pins say
 * it: the N of the mains, neutral poles and pins that carry current are neutral, PE pins are earth,
 * and whatever lies between belongs to the nearer of them.
 *
 * @param earth all that the PE of the mains reaches without passing the neutral
 * @param neutral all that the N of the mains reaches without passing the earth
 * @param joints what joins the two
 * @param parting what lies between pins of the one and the other kind, the joints among it
 */
record NeutralEarth(Set<Node> earth, Set<Node> neutral, List<Branch> joints, Set<Branch> parting) {

  /** Of a study; worked out once for the rules that ask. */
  static NeutralEarth of(Study study) {
    return study.derived(NeutralEarth.class, s -> workedOut(s.circuit()));
  }

  private static NeutralEarth workedOut(Circuit circuit) {
    Set<Node> bars = mains(circuit, Earthing.PE);
    Set<Node> neutrals = mains(circuit, "N");
    Set<Node> reached = circuit.reach(bars, NeutralEarth::joins);
    if (neutrals.stream().noneMatch(reached::contains)) {
      return new NeutralEarth(
          reached, circuit.reach(neutrals, NeutralEarth::joins), List.of(), Set.of());
    }
    Map<Node, Boolean> isEarth = new HashMap<>();
    Deque<Node> open = new ArrayDeque<>();
    for (Node node : circuit.nodes()) {
      if (reached.contains(node)) {
        boolean carries = neutrals.contains(node) || carries(circuit, node);
        boolean protects = node.terminals().stream().anyMatch(t -> isPe(circuit, t));
        if (carries || protects) {
          isEarth.put(node, !carries);
          open.add(node);
        }
      }
    }
    while (!open.isEmpty()) {
      Node node = open.remove();
      for (Branch branch : circuit.branchesAt(node)) {
        if (joins(branch)
            && isEarth.putIfAbsent(branch.other(node), isEarth.getOrDefault(node, Boolean.FALSE))
                == null) {
          open.add(branch.other(node));
        }
      }
    }
    Set<Branch> between = new LinkedHashSet<>();
    for (Branch branch : circuit.branches()) {
      Boolean from = isEarth.get(branch.from());
      if (joins(branch) && from != null && !from.equals(isEarth.get(branch.to()))) {
        between.add(branch);
      }
    }
    Set<Node> neutral = circuit.reach(neutrals, b -> joins(b) && !between.contains(b));
    Set<Node> bare = circuit.reach(bars, b -> joins(b) && !between.contains(b));
    // a pin that carries current and hangs on the earth alone is no neutral
    Set<Branch> parting = new LinkedHashSet<>();
    List<Branch> joints = new ArrayList<>();
    for (Branch branch : between) {
      boolean isJoint = meets(branch, bare, neutral);
      if (isJoint) {
        joints.add(branch);
      }
      if (isJoint || neutral.contains(branch.from()) || neutral.contains(branch.to())) {
        parting.add(branch);
      }
    }
    return new NeutralEarth(
        circuit.reach(bars, b -> joins(b) && !parting.contains(b)),
        neutral,
        List.copyOf(joints),
        Set.copyOf(parting));
  }

  private static boolean meets(Branch branch, Set<Node> earth, Set<Node> neutral) {
    return (earth.contains(branch.from()) && neutral.contains(branch.to()))
        || (earth.contains(branch.to()) && neutral.contains(branch.from()));
  }

  /** True where the neutral gets to a node no more once these branches are out. */
  boolean isNeutralThrough(Circuit circuit, Node node, Predicate<Branch> out) {
    return neutral.contains(node)
        && !circuit
            .reach(mains(circuit, "N"), b -> joins(b) && !parting.contains(b) && !out.test(b))
            .contains(node);
  }

  /** The end of a joint that belongs to the neutral. */
  Node neutralEnd(Branch joint) {
    return earth.contains(joint.from()) ? joint.to() : joint.from();
  }

  /** True for what joins two conductors for good: wires, contacts and diodes. */
  private static boolean joins(Branch branch) {
    return branch instanceof Branch.Conductor
        || branch instanceof Contact
        || branch instanceof DiodeBranch;
  }

  /** Parts between the neutral and the protective conductor that let current through. */
  List<Branch> through(Circuit circuit) {
    return circuit.branches().stream()
        .filter(NeutralEarth::isLeak)
        .filter(b -> meets(b, earth, neutral))
        .toList();
  }

  private static boolean isLeak(Branch branch) {
    return branch instanceof LoadElement
        || branch instanceof Branch.Coil
        || (branch instanceof Passive passive
            && (passive.spec() instanceof Part.Lamp || passive.spec() instanceof Part.Resistor));
  }

  /**
   * What returns its current by the protective conductor: one end on a line, the other on earth.
   */
  List<Branch> returning(Circuit circuit, Feeding whole) {
    return circuit.branches().stream()
        .filter(b -> isLeak(b) || b instanceof Branch.Input)
        .filter(b -> isReturning(b, whole))
        .toList();
  }

  private boolean isReturn(Node line, Node back, Feeding whole) {
    return earth.contains(back) && MainsConsumer.isLine(whole, line);
  }

  /** True for one of {@link #returning}. */
  boolean isReturning(Branch branch, Feeding whole) {
    return isReturn(branch.from(), branch.to(), whole)
        || isReturn(branch.to(), branch.from(), whole);
  }

  private static Set<Node> mains(Circuit circuit, String pin) {
    Set<Node> nodes = new LinkedHashSet<>();
    for (Part part : circuit.netlist().parts().values()) {
      if (part instanceof Part.Mains) {
        circuit.find(new Terminal(part.name(), pin)).ifPresent(nodes::add);
      }
    }
    return nodes;
  }

  /** True for a pin of a load, coil or input, and for a neutral pole. */
  private static boolean carries(Circuit circuit, Node node) {
    return circuit.branchesAt(node).stream()
        .anyMatch(
            b ->
                isLeak(b)
                    || b instanceof Branch.Input
                    || (b instanceof Contact contact && contact.neutralPole()));
  }

  private static boolean isPe(Circuit circuit, Terminal terminal) {
    return terminal.pin().equals(Earthing.PE)
        || Optional.ofNullable(circuit.netlist().parts().get(terminal.part()))
            .flatMap(Part::inputOf)
            .filter(i -> i.pins().size() > 2 && i.pins().get(2).equals(terminal.pin()))
            .isPresent();
  }
}
