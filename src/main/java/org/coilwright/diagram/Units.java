// Over 250 lines: every kind of part is taken apart here.
package org.coilwright.diagram;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Part.ContactForm;
import org.coilwright.netlist.Part.ContactSpec;
import org.coilwright.netlist.Part.Pole;
import org.coilwright.netlist.Written;

/** Takes parts apart into what is drawn in one piece: coil and contacts stand on their own. */
final class Units {
  private final Netlist netlist;
  private final List<Unit> units = new ArrayList<>();

  private Units(Netlist netlist) {
    this.netlist = netlist;
  }

  static List<Unit> of(Netlist netlist) {
    Units all = new Units(netlist);
    netlist.parts().values().forEach(all::add);
    return all.units;
  }

  private void add(Part part) {
    if (part instanceof Part.Mains) {
      supply(part, mainsWords());
    } else if (part instanceof Part.Source source) {
      supply(part, List.of(source.kind().text()));
    } else if (part instanceof Part.Controller controller) {
      controller.auxSupply().ifPresent(aux -> source(part, aux));
      controller.outputs().forEach((name, spec) -> output(part, name, spec));
      controller.mains().ifPresent(input -> input(part, input));
      reserved(controller);
    } else if (part instanceof Part.DcSupply supply) {
      source(part, supply.output());
      supply.input().ifPresent(input -> input(part, input));
    } else if (part instanceof Part.Relay relay) {
      unit(part, "coil", Look.COIL, coilWords(relay.coil()))
          .top(0, relay.coil().first())
          .bottom(0, relay.coil().second());
      contacts(relay);
    } else if (part instanceof Part.Fuse fuse) {
      twoPins(part, Look.FUSE, words(fuse.rating()));
    } else if (part instanceof Part.Protective device) {
      List<String> words =
          Stream.of(device.curve().map(Written::text), device.rating().map(Written::text))
              .flatMap(Optional::stream)
              .toList();
      List<String> lines = new ArrayList<>();
      if (!words.isEmpty()) {
        lines.add(String.join(" ", words));
      }
      Stream.of(device.trip().map(Written::text), device.kind().map(k -> "type " + k.text()))
          .flatMap(Optional::stream)
          .forEach(lines::add);
      poles(part, device.poles(), device.isRcd() ? Look.RCD : Look.BREAKER, lines);
    } else if (part instanceof Part.Switch hand) {
      poles(
          part,
          hand.poles(),
          hand.form() == ContactForm.NC ? Look.SWITCH_BREAK : Look.SWITCH_MAKE,
          List.of());
    } else if (part instanceof Part.Thermal thermal) {
      poles(
          part,
          thermal.poles(),
          thermal.isCutOut() ? Look.CUT_OUT : Look.THERMOSTAT,
          Stream.concat(
                  words(thermal.opensAt()).stream(),
                  thermal.reset().map(r -> r.text() + " reset").stream())
              .toList());
    } else if (part instanceof Part.TerminalStrip strip) {
      clamps(strip);
    } else if (part instanceof Part.Heater heater) {
      load(part, Look.HEATER, words(heater.power(), heater.voltage()), isStar(heater));
    } else if (part instanceof Part.OtherLoad load) {
      load(part, look(load), words(load.power(), load.current(), load.voltage()), false);
    } else {
      small(part);
    }
  }

  private void supply(Part part, List<String> words) {
    Unit unit = unit(part, "", Look.MAINS, words);
    for (int i = 0; i < part.pins().size(); i++) {
      unit.bottom(i, part.pins().get(i));
    }
  }

  /** The polarity is told where it matters: turned round, a diode inside shorts the supply. */
  private static List<String> coilWords(Part.CoilSpec coil) {
    List<String> words = new ArrayList<>();
    words.add(coil.voltage().text());
    coil.polarity().map(Written::text).filter(p -> !p.equals("none")).ifPresent(words::add);
    return words;
  }

  private void small(Part part) {
    if (part instanceof Part.Diode) {
      unit(part, "", Look.DIODE, List.of()).top(0, "K").bottom(0, "A");
    } else if (part instanceof Part.Varistor varistor) {
      twoPins(part, Look.VARISTOR, words(varistor.clampingVoltage()));
    } else if (part instanceof Part.Snubber snubber) {
      twoPins(part, Look.SNUBBER, words(snubber.resistance(), snubber.capacitance()));
    } else if (part instanceof Part.Resistor resistor) {
      twoPins(part, Look.RESISTOR, words(resistor.resistance()));
    } else if (part instanceof Part.Lamp lamp) {
      twoPins(part, Look.LAMP, words(lamp.voltage()));
    } else {
      throw new IllegalStateException("a part of no kind: " + part.name());
    }
  }

  private Unit unit(Part part, String what, Look look, List<String> words) {
    return unit(part, what, look, words, false);
  }

  private Unit unit(Part part, String what, Look look, List<String> words, boolean star) {
    String name = what.isEmpty() ? part.name() : part.name() + " " + what;
    Unit unit = new Unit(name, part.name(), look, words, star);
    units.add(unit);
    return unit;
  }

  private void twoPins(Part part, Look look, List<String> words) {
    unit(part, "", look, words).top(0, part.pins().get(0)).bottom(0, part.pins().get(1));
  }

  private void source(Part part, Part.DcOutput output) {
    List<String> words = new ArrayList<>(words(output.voltage()));
    output.isolation().ifPresent(i -> words.add(i.text()));
    unit(part, "supply", Look.SOURCE, words)
        .top(0, output.plus().value())
        .bottom(0, output.minus().value());
  }

  private void input(Part part, Part.MainsInput input) {
    Unit unit = unit(part, "mains", Look.INPUT, words(input.voltage()));
    unit.top(0, input.pins().get(0));
    if (input.pins().size() > 1) {
      unit.bottom(0, input.pins().get(1));
    }
    for (String pin : input.pins().subList(Math.min(2, input.pins().size()), input.pins().size())) {
      unit(part, "mains " + pin, Look.CLAMPS, List.of()).top(0, pin).bottom(0, pin);
    }
  }

  private void output(Part part, String name, ContactSpec spec) {
    unit(part, name, spec.form() == ContactForm.NC ? Look.BREAK : Look.MAKE, List.of(name))
        .top(0, spec.from())
        .bottom(0, spec.to());
  }

  /** Pins that must stay free stand there, so that nobody takes them for free ones. */
  private void reserved(Part.Controller controller) {
    List<String> used =
        units.stream()
            .filter(u -> u.part().equals(controller.name()))
            .flatMap(u -> u.ports().stream().map(p -> p.terminal().pin()))
            .toList();
    List<String> rest = controller.pins().stream().filter(p -> !used.contains(p)).toList();
    if (rest.isEmpty()) {
      return;
    }
    List<String> uses =
        rest.stream()
            .map(p -> Optional.ofNullable(controller.reserved().get(p)).map(Written::value))
            .map(use -> use.orElse("not in use"))
            .toList();
    Unit unit = unit(controller, "reserved", Look.RESERVED, uses);
    for (int i = 0; i < rest.size(); i++) {
      unit.top(i, rest.get(i));
    }
  }

  private void contacts(Part.Relay relay) {
    Map<String, List<ContactSpec>> byCommon = new LinkedHashMap<>();
    List<ContactSpec> poles = new ArrayList<>();
    for (ContactSpec contact : relay.contacts()) {
      if (contact.pole()) {
        poles.add(contact);
      } else {
        byCommon.computeIfAbsent(contact.from(), f -> new ArrayList<>()).add(contact);
      }
    }
    if (!poles.isEmpty()) {
      boolean opens = poles.get(0).form() == ContactForm.NC;
      Unit unit = unit(relay, "poles", opens ? Look.MAIN_BREAK : Look.MAIN_CONTACT, List.of());
      for (int i = 0; i < poles.size(); i++) {
        unit.top(i, poles.get(i).from()).bottom(i, poles.get(i).to());
      }
    }
    for (List<ContactSpec> alike : byCommon.values()) {
      boolean both = alike.stream().map(ContactSpec::form).distinct().count() == 2;
      if (alike.size() == 2 && both) {
        boolean firstRests = alike.get(0).form() == ContactForm.NC;
        ContactSpec rests = alike.get(firstRests ? 0 : 1);
        ContactSpec works = alike.get(firstRests ? 1 : 0);
        unit(relay, rests.from(), Look.CHANGEOVER, List.of())
            .top(0, rests.from())
            .bottom(0, works.to())
            .bottom(1, rests.to());
      } else {
        for (ContactSpec contact : alike) {
          unit(
                  relay,
                  contact.name(),
                  contact.form() == ContactForm.NC ? Look.BREAK : Look.MAKE,
                  List.of())
              .top(0, contact.from())
              .bottom(0, contact.to());
        }
      }
    }
  }

  private void poles(Part part, List<Pole> poles, Look look, List<String> words) {
    Unit unit = unit(part, "", look, words);
    for (int i = 0; i < poles.size(); i++) {
      unit.top(i, poles.get(i).from()).bottom(i, poles.get(i).to());
    }
  }

  private void clamps(Part.TerminalStrip strip) {
    List<String> left = new ArrayList<>(strip.pins());
    for (List<String> bridged : strip.bridged()) {
      List<String> together = bridged.stream().filter(left::contains).toList();
      clampsOf(strip, together);
      left.removeAll(together);
    }
    left.forEach(pin -> clampsOf(strip, List.of(pin)));
  }

  private void clampsOf(Part strip, List<String> pins) {
    if (pins.isEmpty()) {
      return;
    }
    Unit unit = unit(strip, pins.get(0), Look.CLAMPS, List.of());
    for (int i = 0; i < pins.size(); i++) {
      unit.top(i, pins.get(i)).bottom(i, pins.get(i));
    }
  }

  private void load(Part part, Look look, List<String> words, boolean star) {
    Unit unit = unit(part, "", look, words, star);
    for (int i = 0; i < part.pins().size(); i++) {
      unit.top(i, part.pins().get(i));
    }
  }

  private static Look look(Part.OtherLoad load) {
    return switch (load.head().is()) {
      case "motor" -> Look.MOTOR;
      case "transformer" -> Look.TRANSFORMER;
      case "charger" -> Look.CHARGER;
      case "lighting" -> Look.LIGHTING;
      default -> Look.LOAD;
    };
  }

  private static boolean isStar(Part.Heater heater) {
    return switch (heater.connection().value()) {
      case STAR, STAR_WITH_NEUTRAL -> true;
      case SINGLE, DELTA -> false;
    };
  }

  private List<String> mainsWords() {
    return netlist
        .site()
        .mains()
        .map(
            m ->
                Stream.concat(
                        Stream.of(m.voltage().text()), m.earthing().map(Written::text).stream())
                    .toList())
        .orElse(List.of());
  }

  @SafeVarargs
  private static List<String> words(Optional<? extends Written<?>>... values) {
    List<String> words = new ArrayList<>();
    for (Optional<? extends Written<?>> value : values) {
      value.ifPresent(v -> words.add(v.text()));
    }
    return words;
  }
}
