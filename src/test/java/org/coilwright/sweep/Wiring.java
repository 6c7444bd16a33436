package org.coilwright.sweep;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Part.ContactForm;
import org.coilwright.netlist.Part.ContactSpec;
import org.coilwright.netlist.Part.Pole;
import org.coilwright.netlist.Site.MainsSupply;
import org.coilwright.netlist.Site.Phases;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Wire;
import org.coilwright.sweep.Element.Link;
import org.coilwright.sweep.Element.Output;
import org.coilwright.sweep.Element.Sort;
import org.coilwright.sweep.Element.Use;
import org.coilwright.sweep.Element.Valve;

/** A netlist as nets (pins that wires join) and the elements between them. */
final class Wiring {
  final Netlist netlist;
  final Joined<Terminal> nets = new Joined<>();
  final List<Use> uses = new ArrayList<>();
  final List<Link> links = new ArrayList<>();
  final List<Valve> valves = new ArrayList<>();
  final List<Output> outputs = new ArrayList<>();

  /** The lines of the mains by net, with the angle of each in degrees. */
  final Map<Terminal, Double> lines = new LinkedHashMap<>();

  /** Designation of the mains, empty if the circuit has none. */
  final Optional<String> mains;

  /** Line to neutral, in volts. */
  final double lineVolts;

  private int inner;

  Wiring(Netlist netlist) {
    this.netlist = netlist;
    for (Part part : netlist.parts().values()) {
      part.pins().forEach(pin -> nets.of(new Terminal(part.name(), pin)));
      if (part instanceof Part.TerminalStrip strip) {
        for (List<String> group : strip.bridged()) {
          group.forEach(
              clamp ->
                  nets.join(
                      new Terminal(part.name(), group.get(0)), new Terminal(part.name(), clamp)));
        }
      }
    }
    for (Wire wire : netlist.wires()) {
      nets.join(wire.from().value(), wire.to().value());
    }
    mains =
        netlist.parts().values().stream()
            .filter(p -> p instanceof Part.Mains)
            .map(Part::name)
            .findFirst();
    Optional<MainsSupply> supply = netlist.site().mains();
    double volts = supply.map(s -> Plain.nominal(s.voltage())).orElse(230.0);
    Phases phases = supply.map(s -> s.phases().value()).orElse(Phases.ONE);
    lineVolts =
        phases == Phases.THREE ? volts / Math.sqrt(3) : phases == Phases.SPLIT ? volts / 2 : volts;
    mains.ifPresent(name -> lines(name, phases));
    netlist.parts().values().forEach(this::part);
  }

  private void lines(String name, Phases phases) {
    switch (phases) {
      case ONE -> lines.put(new Terminal(name, "L"), 0.0);
      case SPLIT -> {
        lines.put(new Terminal(name, "L1"), 0.0);
        lines.put(new Terminal(name, "L2"), 180.0);
      }
      case THREE -> {
        lines.put(new Terminal(name, "L1"), 0.0);
        lines.put(new Terminal(name, "L2"), -120.0);
        lines.put(new Terminal(name, "L3"), 120.0);
      }
    }
  }

  int net(String part, String pin) {
    return nets.of(new Terminal(part, pin));
  }

  private int net(Part part, String pin) {
    return net(part.name(), pin);
  }

  /** True if a wire ends on the pin. */
  boolean isWired(Terminal pin) {
    return netlist.wires().stream()
        .anyMatch(w -> w.from().value().equals(pin) || w.to().value().equals(pin));
  }

  private void part(Part part) {
    String name = part.name();
    if (part instanceof Part.Relay relay) {
      coil(relay);
      relay.contacts().forEach(c -> contact(part, c, name));
    } else if (part instanceof Part.Controller controller) {
      controller.outputs().forEach((o, c) -> contact(part, c, name + "." + o));
      controller.mains().ifPresent(m -> input(part, m));
      controller.auxSupply().ifPresent(s -> output(part, s, controller.mains().isPresent()));
    } else if (part instanceof Part.DcSupply supply) {
      supply.input().ifPresent(m -> input(part, m));
      output(part, supply.output(), supply.input().isPresent());
    } else if (part instanceof Part.Diode) {
      valves.add(new Valve(name, net(part, "A"), net(part, "K")));
    } else if (part instanceof Part.Lamp lamp) {
      double ohms = Plain.nominal(lamp.voltage(), 24) / Plain.nominal(lamp.current(), 0.02);
      use(part, Sort.OTHER, "1", "2", ohms, ohms);
    } else if (part instanceof Part.Resistor resistor) {
      double ohms = Plain.nominal(resistor.resistance(), 1000);
      use(part, Sort.OTHER, "1", "2", ohms, ohms);
    } else if (part instanceof Part.Fuse) {
      links.add(
          new Link(name, "1-2", net(part, "1"), net(part, "2"), "", ContactForm.NC, true, false));
    } else if (part instanceof Part.Protective device) {
      poles(part, device.poles(), "", ContactForm.NC, !device.isRcd());
    } else if (part instanceof Part.Switch device) {
      poles(part, device.poles(), name, device.form(), false);
    } else if (part instanceof Part.Thermal device) {
      poles(part, device.poles(), name, device.form(), false);
    } else if (part instanceof Part.Heater heater) {
      double volts = Plain.nominal(heater.voltage(), lineVolts);
      double watts = Plain.nominal(heater.power(), 1000);
      elements(part, heater.connection().value().name(), volts, watts);
    } else if (part instanceof Part.OtherLoad load) {
      double volts = Plain.nominal(load.voltage(), lineVolts);
      double watts = Plain.nominal(load.power(), volts * Plain.nominal(load.current(), 1));
      String connection =
          part.pins().contains("N") ? "STAR_WITH_NEUTRAL" : part.pins().contains("3") ? "STAR" : "";
      elements(part, connection, volts, watts);
    }
  }

  private void coil(Part.Relay relay) {
    double volts = Plain.nominal(relay.coil().voltage());
    double ohms;
    double direct;
    if (Plain.isDirect(relay.coil().voltage())) {
      ohms =
          relay.coil().resistance().isPresent()
              ? Plain.nominal(relay.coil().resistance(), 600)
              : volts * volts / Plain.nominal(relay.coil().power(), 1);
      direct = ohms;
    } else {
      ohms = volts * volts / Plain.nominal(relay.coil().hold(), 5);
      direct = Plain.nominal(relay.coil().resistance(), ohms / 10);
    }
    use(relay, Sort.COIL, relay.coil().first(), relay.coil().second(), ohms, direct);
    if (relay.coil().suppression().map(s -> s.value().equals("diode")).orElse(false)) {
      // it blocks while the coil is on as it is marked: the first pin plus, unless the other is
      // said to be; wired the other way round it is a wire
      boolean secondIsPlus =
          relay
              .coil()
              .polarity()
              .map(p -> p.value())
              .orElse("")
              .startsWith(relay.coil().second() + " ");
      String plus = secondIsPlus ? relay.coil().second() : relay.coil().first();
      String minus = secondIsPlus ? relay.coil().first() : relay.coil().second();
      valves.add(new Valve(relay.name(), net(relay, minus), net(relay, plus)));
    }
  }

  private void contact(Part part, ContactSpec contact, String actuator) {
    links.add(
        new Link(
            part.name(),
            contact.name(),
            net(part, contact.from()),
            net(part, contact.to()),
            actuator,
            contact.form(),
            false,
            false));
  }

  private void poles(Part part, List<Pole> poles, String actuator, ContactForm f, boolean guard) {
    for (Pole pole : poles) {
      links.add(
          new Link(
              part.name(),
              pole.from() + "-" + pole.to(),
              net(part, pole.from()),
              net(part, pole.to()),
              actuator,
              f,
              guard,
              pole.neutral()));
    }
  }

  private void input(Part part, Part.MainsInput input) {
    use(part, Sort.INPUT, input.pins().get(0), input.pins().get(1), 10_000, 1e9);
  }

  private void output(Part part, Part.DcOutput output, boolean fed) {
    outputs.add(
        new Output(
            part.name(),
            net(part, output.plus().value()),
            net(part, output.minus().value()),
            Plain.nominal(output.voltage(), 24),
            fed));
  }

  private void use(Part part, Sort sort, String a, String b, double ohms, double direct) {
    uses.add(new Use(part.name(), sort, net(part, a), net(part, b), ohms, direct));
  }

  private void elements(Part part, String connection, double volts, double watts) {
    double ohms = volts * volts / watts;
    switch (connection) {
      case "STAR", "STAR_WITH_NEUTRAL" -> {
        Terminal point =
            connection.equals("STAR")
                ? new Terminal(part.name(), "star point " + inner++)
                : new Terminal(part.name(), "N");
        for (String pin : List.of("1", "2", "3")) {
          uses.add(new Use(part.name(), Sort.LOAD, net(part, pin), nets.of(point), ohms, ohms));
        }
      }
      case "DELTA" -> {
        use(part, Sort.LOAD, "1", "2", 3 * ohms, 3 * ohms);
        use(part, Sort.LOAD, "2", "3", 3 * ohms, 3 * ohms);
        use(part, Sort.LOAD, "3", "1", 3 * ohms, 3 * ohms);
      }
      default -> use(part, Sort.LOAD, "1", "2", ohms, ohms);
    }
  }
}
