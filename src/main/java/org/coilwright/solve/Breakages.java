// Over 250 lines: one method for each way in which a thing can break.
package org.coilwright.solve;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.coilwright.circuit.Actuator;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Branch.Joint;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part;

/** Every single thing that may break in a circuit, in the order of the netlist. */
final class Breakages {
  /** A run of more cores than this is taken as a loom: only cores written next to each other. */
  private static final int MOST_CORES = 7;

  private final Circuit circuit;
  private final Earth earth;
  private final List<Breakage> all = new ArrayList<>();
  private final Map<Node, Integer> nets = new HashMap<>();

  private Breakages(Circuit circuit, Earth earth) {
    this.circuit = circuit;
    this.earth = earth;
  }

  static List<Breakage> of(Circuit circuit, Earth earth) {
    Breakages breakages = new Breakages(circuit, earth);
    breakages.collect();
    return breakages.all;
  }

  private void collect() {
    for (Branch branch : circuit.branches()) {
      if (branch instanceof Contact contact) {
        contact(contact);
      } else if (branch instanceof Branch.Coil coil) {
        if (circuit.branchesOf(coil.part()).stream()
            .anyMatch(b -> b instanceof Contact && isWired(b))) {
          Fault sticks =
              new Fault(
                  Fault.Kind.ARMATURE_STICKS,
                  List.of(coil.part()),
                  coil.mark(),
                  coil.part() + " stays pulled in");
          all.add(Breakage.of(sticks, Alteration.stuck(coil.part())));
        }
        single(Fault.Kind.COIL_OPEN, coil, " opens", Alteration.gone(coil));
        single(Fault.Kind.COIL_SHORTED, coil, " is shorted", Alteration.bridged(coil));
        insulation(coil);
      } else if (branch instanceof Source source) {
        single(Fault.Kind.SUPPLY_LOST, source, " is lost", Alteration.gone(source));
        if (source.volts().filter(v -> !v.isExact()).isPresent()) {
          single(Fault.Kind.SUPPLY_AT_TOP, source, " is at its top", Alteration.atTop(source));
        }
      } else if (isSuppressor(branch)) {
        single(Fault.Kind.SUPPRESSOR_OPEN, branch, " opens", Alteration.gone(branch));
        single(Fault.Kind.SUPPRESSOR_SHORTED, branch, " is shorted", Alteration.bridged(branch));
      } else if (branch instanceof Conductor wire) {
        Fault fault =
            new Fault(
                Fault.Kind.WIRE_BROKEN, List.of(wire.id()), wire.mark(), inWords(wire) + " breaks");
        all.add(Breakage.of(fault, Alteration.gone(wire)));
      }
    }
    cores();
    earth.terminal().ifPresent(this::earthed);
  }

  private static boolean isSuppressor(Branch branch) {
    return branch instanceof Branch.DiodeBranch
        || (branch instanceof Branch.Passive passive
            && (passive.spec() instanceof Part.Varistor || passive.spec() instanceof Part.Snubber));
  }

  private void single(Fault.Kind kind, Branch branch, String does, Alteration way) {
    if (isWired(branch)) {
      Fault fault = new Fault(kind, List.of(branch.id()), branch.mark(), inWords(branch) + does);
      all.add(Breakage.of(fault, way));
    }
  }

  private boolean isWired(Branch branch) {
    return circuit.branchesAt(branch.from()).size() > 1
        && circuit.branchesAt(branch.to()).size() > 1;
  }

  private static String inWords(Branch branch) {
    if (branch instanceof Conductor wire) {
      return wire.id()
          + " ("
          + wire.wire().from().value()
          + " to "
          + wire.wire().to().value()
          + ")";
    }
    if (branch instanceof Branch.Coil || isSuppressor(branch)) {
      return branch.part() + (branch instanceof Branch.Coil ? " coil" : "");
    }
    return branch.id();
  }

  private void contact(Contact contact) {
    if (contact.actuator().kind() == Actuator.Kind.PROTECTIVE) {
      List<Contact> poles = circuit.contactsOf(contact.actuator());
      if (contact.equals(poles.get(0))) {
        Fault fault =
            new Fault(
                Fault.Kind.PROTECTION_STUCK,
                List.of(contact.part()),
                contact.mark(),
                contact.part() + " does not open");
        boolean isMoved = circuit.independentActuators().contains(contact.actuator());
        Alteration stuck = Alteration.bridged(poles.toArray(Branch[]::new));
        all.add(Breakage.of(fault, isMoved ? stuck : Alteration.NONE));
      }
      return;
    }
    single(
        Fault.Kind.CONTACT_WELDS,
        contact,
        " welds",
        Alteration.bridged(contact).without(mirrorsOf(contact)));
    single(Fault.Kind.CONTACT_NEVER_CLOSES, contact, " never closes", Alteration.gone(contact));
  }

  /** Mirror contacts stay open as long as any main pole is welded. */
  private Set<Branch> mirrorsOf(Contact welded) {
    Set<Branch> mirrors = new HashSet<>();
    if (welded.pole()) {
      circuit.contactsOf(welded.actuator()).stream()
          .filter(c -> c.form() == Part.ContactForm.NC)
          .filter(c -> c.spec().flatMap(Part.ContactSpec::mirror).map(m -> m.value()).orElse(false))
          .forEach(mirrors::add);
    }
    return mirrors;
  }

  private void insulation(Branch.Coil coil) {
    List<Alteration> ways = new ArrayList<>();
    Set<Node> contacts = new LinkedHashSet<>();
    for (Branch branch : circuit.branchesOf(coil.part())) {
      if (branch instanceof Contact contact && isWired(contact)) {
        contacts.add(contact.from());
        contacts.add(contact.to());
      }
    }
    for (Node pin : List.of(coil.from(), coil.to())) {
      for (Node contact : contacts) {
        if (!contact.equals(pin)) {
          ways.add(Alteration.joined(joint(pin, contact, coil.mark())));
        }
      }
    }
    if (!ways.isEmpty() && isWired(coil)) {
      Fault fault =
          new Fault(
              Fault.Kind.INSULATION_FAILED,
              List.of(coil.part()),
              coil.mark(),
              coil.part() + " breaks down between coil and contacts",
              circuit.netlist().parts().get(coil.part()) instanceof Part.Relay relay
                  ? stated(relay)
                  : "");
      all.add(new Breakage(fault, ways));
    }
  }

  /** Double and reinforced insulation is made so that no single fault breaks it down. */
  private static String stated(Part.Relay relay) {
    return relay
        .insulation()
        .flatMap(Part.InsulationSpec::coilToContacts)
        .map(w -> w.value().strip().toLowerCase(Locale.ROOT))
        .filter(Set.of("reinforced", "double")::contains)
        .map(w -> "stated as " + w + ": made so that one fault does not do this")
        .orElse("");
  }

  private static Joint joint(Node one, Node other, Mark mark) {
    return new Joint("joint " + one + " " + other, one, other, mark, 0);
  }

  private void cores() {
    Map<String, List<Conductor>> runs = new LinkedHashMap<>();
    for (Conductor wire : circuit.branches(Conductor.class)) {
      wire.run()
          .ifPresent(run -> runs.computeIfAbsent(run.name(), r -> new ArrayList<>()).add(wire));
    }
    runs.forEach(
        (run, wires) -> {
          int near = wires.size() <= MOST_CORES ? wires.size() : 1;
          for (int i = 0; i < wires.size(); i++) {
            for (int j = i + 1; j < wires.size() && j <= i + near; j++) {
              joined(run, wires.get(i), wires.get(j));
            }
          }
        });
  }

  private void joined(String run, Conductor one, Conductor other) {
    if (netOf(one.from()) == netOf(other.from())) {
      return;
    }
    Fault fault =
        new Fault(
            Fault.Kind.CORES_JOINED,
            List.of(one.id(), other.id()),
            one.mark(),
            inWords(one) + " and " + inWords(other) + " touch in " + run);
    all.add(Breakage.of(fault, Alteration.joined(joint(one.from(), other.from(), one.mark()))));
  }

  private int netOf(Node node) {
    Integer known = nets.get(node);
    if (known == null) {
      known = nets.size();
      for (Node member : circuit.net(node)) {
        nets.put(member, known);
      }
    }
    return known;
  }

  /**
   * One fault for each net of a control circuit, wherever it touches earth: what leads to a coil
   * through wires, contacts and suppressors, up to the protective devices and main poles.
   */
  private void earthed(Node ground) {
    Set<Node> pins = new LinkedHashSet<>();
    for (Branch.Coil coil : circuit.branches(Branch.Coil.class)) {
      pins.add(coil.from());
      pins.add(coil.to());
    }
    Set<Node> control = circuit.reach(pins, Breakages::isControlWay);
    Set<Integer> done = new HashSet<>(List.of(netOf(ground)));
    for (Conductor wire : circuit.branches(Conductor.class)) {
      if (!control.contains(wire.from()) || !done.add(netOf(wire.from()))) {
        continue;
      }
      Fault fault =
          new Fault(
              Fault.Kind.EARTHED,
              List.of(wire.id()),
              wire.mark(),
              wire.wire().from().value() + " touches earth");
      all.add(Breakage.of(fault, Alteration.joined(joint(wire.from(), ground, wire.mark()))));
    }
  }

  private static boolean isControlWay(Branch branch) {
    return Circuit.isWay(branch) && !(branch instanceof Contact contact && contact.pole());
  }
}
