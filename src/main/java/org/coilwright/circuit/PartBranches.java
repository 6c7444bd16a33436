package org.coilwright.circuit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Part.ContactForm;
import org.coilwright.netlist.Part.ContactSpec;
import org.coilwright.netlist.Part.DcOutput;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Dimension;

/** Gives every part its meaning: the branches it puts between its pins. */
final class PartBranches {
  private final Terminals terminals;
  private final LoadElements loads;
  private final MainsSources mains;
  private final List<Branch> branches = new ArrayList<>();
  private final Map<String, Actuator> actuators = new LinkedHashMap<>();

  PartBranches(Netlist netlist, Terminals terminals) {
    this.terminals = terminals;
    this.loads = new LoadElements(terminals);
    this.mains = new MainsSources(netlist.site().mains(), terminals);
    netlist.parts().values().forEach(this::add);
  }

  List<Branch> branches() {
    return branches;
  }

  /** Every actuator by its name, in the order of the netlist. */
  Map<String, Actuator> actuators() {
    return actuators;
  }

  private void add(Part part) {
    if (part instanceof Part.Mains source) {
      branches.addAll(mains.of(source));
    } else if (part instanceof Part.Controller controller) {
      controller.auxSupply().ifPresent(aux -> branches.add(direct(part, "aux-supply", aux)));
      controller.outputs().forEach((name, spec) -> addOutput(part, name, spec));
      controller.mains().ifPresent(input -> addInput(part, input));
    } else if (part instanceof Part.DcSupply supply) {
      branches.add(direct(part, "output", supply.output()));
      supply.input().ifPresent(input -> addInput(part, input));
    } else if (part instanceof Part.Relay relay) {
      addRelay(relay);
    } else if (part instanceof Part.Diode diode) {
      String id = part.name() + ".A-K";
      branches.add(
          new Branch.DiodeBranch(id, at(part, "A"), at(part, "K"), mark(part), part.name(), diode));
    } else if (part instanceof Part.Varistor
        || part instanceof Part.Snubber
        || part instanceof Part.Resistor
        || part instanceof Part.Lamp) {
      String id = part.name() + ".1-2";
      branches.add(
          new Branch.Passive(id, at(part, "1"), at(part, "2"), mark(part), part.name(), part));
    } else if (part instanceof Part.Fuse) {
      Actuator fuse = actuator(Actuator.Kind.PROTECTIVE, part.name());
      addPole(part, fuse, ContactForm.NO, new Part.Pole("1", "2", false), true);
    } else if (part instanceof Part.Protective device) {
      Actuator trip = actuator(Actuator.Kind.PROTECTIVE, part.name());
      device.poles().forEach(pole -> addPole(part, trip, ContactForm.NO, pole, true));
    } else if (part instanceof Part.Switch hand) {
      Actuator handle = actuator(Actuator.Kind.SWITCH, part.name());
      hand.poles().forEach(pole -> addPole(part, handle, hand.form(), pole, false));
    } else if (part instanceof Part.Thermal thermal) {
      Actuator.Kind kind = thermal.isCutOut() ? Actuator.Kind.CUT_OUT : Actuator.Kind.THERMOSTAT;
      Actuator heat = actuator(kind, part.name());
      thermal.poles().forEach(pole -> addPole(part, heat, thermal.form(), pole, false));
    } else {
      branches.addAll(loads.of(part));
    }
  }

  private void addOutput(Part part, String name, ContactSpec spec) {
    String id = part.name() + "." + name;
    Actuator output = actuator(Actuator.Kind.OUTPUT, id);
    addContact(part, id, output, spec);
  }

  private void addRelay(Part.Relay relay) {
    String name = relay.name();
    Part.CoilSpec coil = relay.coil();
    branches.add(
        new Branch.Coil(
            name + ".coil",
            at(relay, coil.first()),
            at(relay, coil.second()),
            coil.mark(),
            name,
            coil));
    Actuator armature = actuator(Actuator.Kind.COIL, name);
    relay.contacts().forEach(c -> addContact(relay, name + "." + c.name(), armature, c));
  }

  private void addContact(Part part, String id, Actuator actuator, ContactSpec spec) {
    branches.add(
        new Branch.Contact(
            id,
            at(part, spec.from()),
            at(part, spec.to()),
            spec.mark(),
            part.name(),
            actuator,
            spec.form(),
            spec.pole(),
            false,
            Optional.of(spec)));
  }

  private void addPole(
      Part part, Actuator actuator, ContactForm form, Part.Pole pole, boolean main) {
    branches.add(
        new Branch.Contact(
            part.name() + "." + pole.from() + "-" + pole.to(),
            at(part, pole.from()),
            at(part, pole.to()),
            mark(part),
            part.name(),
            actuator,
            form,
            main,
            pole.neutral(),
            Optional.empty()));
  }

  private void addInput(Part part, Part.MainsInput input) {
    List<String> pins = input.pins();
    if (pins.size() < 2) {
      return;
    }
    branches.add(
        new Branch.Input(
            part.name() + ".input",
            at(part, pins.get(0)),
            at(part, pins.get(1)),
            input.mark(),
            part.name()));
  }

  private Branch direct(Part part, String name, DcOutput output) {
    OptionalDouble limit =
        output.limit().map(Written::value).filter(q -> q.dimension() == Dimension.CURRENT).stream()
            .mapToDouble(q -> q.nominal())
            .findFirst();
    return new Branch.Source(
        part.name() + "." + name,
        at(part, output.minus().value()),
        at(part, output.plus().value()),
        output.mark(),
        part.name(),
        output.voltage().map(Written::value),
        limit,
        OptionalInt.empty(),
        Optional.of(output));
  }

  private Actuator actuator(Actuator.Kind kind, String name) {
    return actuators.computeIfAbsent(name, n -> new Actuator(kind, n));
  }

  private Node at(Part part, String pin) {
    return terminals.at(new Terminal(part.name(), pin));
  }

  private static Mark mark(Part part) {
    return part.head().mark();
  }
}
