package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Part.ContactSpec;
import org.coilwright.netlist.Part.DcOutput;
import org.coilwright.netlist.Part.MainsInput;
import org.coilwright.netlist.Part.Pole;
import org.coilwright.netlist.Terminal;

/** Which pins of a part need a wire and have none. What is left free at both ends is a spare. */
final class LooseEnds {
  private static final String WIRE_IT = "Wire %s, or take the part out.";

  private final Part part;
  private final double extraLow;
  private final Set<String> wired = new LinkedHashSet<>();
  private final List<End> loose = new ArrayList<>();
  private int looked;

  /**
   * A pin without a wire.
   *
   * @param pins the pins of which one needs a wire; several only for a changeover
   * @param mark where the need is written
   * @param wired pins of the same contact or pair that do have a wire
   * @param sentence what is wrong, with a place for the pin
   * @param remedy with a place for the pin
   */
  record End(List<String> pins, Mark mark, List<String> wired, String sentence, String remedy) {}

  private LooseEnds(Part part, Circuit circuit, double extraLow) {
    this.part = part;
    this.extraLow = extraLow;
    for (String pin : part.pins()) {
      if (!circuit.wiresAt(new Terminal(part.name(), pin)).isEmpty()) {
        wired.add(pin);
      }
    }
  }

  /**
   * Looks a part over; one without any wire is a matter for another rule.
   *
   * @param extraLow V, up to which a load's voltage is extra-low
   */
  static LooseEnds of(Part part, Circuit circuit, double extraLow) {
    LooseEnds ends = new LooseEnds(part, circuit, extraLow);
    if (ends.wired.isEmpty()) {
      return ends;
    }
    if (part instanceof Part.TerminalStrip strip) {
      ends.clamps(strip, circuit);
    } else {
      ends.look();
    }
    return ends;
  }

  List<End> loose() {
    return loose;
  }

  /** How many ends were found to need a wire. */
  int looked() {
    return looked;
  }

  private void look() {
    Mark mark = part.head().mark();
    if (part instanceof Part.Relay relay) {
      Part.CoilSpec coil = relay.coil();
      all(List.of(coil.first(), coil.second()), coil.mark(), "a coil needs both its pins");
      relay.contacts().forEach(c -> contacts(relay.contacts(), c));
    } else if (part instanceof Part.Controller controller) {
      List<ContactSpec> outputs = List.copyOf(controller.outputs().values());
      outputs.forEach(c -> contacts(outputs, c));
      controller.auxSupply().ifPresent(aux -> pair(pins(aux), aux.mark(), "the supply's"));
      controller.mains().ifPresent(in -> pair(in.pins(), in.mark(), "the mains input's"));
    } else if (part instanceof Part.DcSupply supply) {
      all(pins(supply.output()), supply.output().mark(), "a supply feeds from two pins");
      supply.input().ifPresent(this::input);
    } else if (part instanceof Part.Protective device) {
      device.poles().forEach(this::pole);
    } else if (part instanceof Part.Switch hand) {
      hand.poles().forEach(this::pole);
    } else if (part instanceof Part.Thermal thermal) {
      thermal.poles().forEach(this::pole);
    } else if (part instanceof Part.Heater || part instanceof Part.OtherLoad) {
      boolean low = Earthing.isForExtraLow(part, extraLow);
      List<String> pins =
          part.pins().stream()
              .filter(pin -> !pin.equals(Earthing.PE) || (Earthing.isNeeded(part) && !low))
              .toList();
      all(pins, mark, "the load needs all its pins");
      if (low && Earthing.isNeeded(part)) {
        low(mark);
      }
    } else if (part instanceof Part.Source) {
      List<String> pins = part.pins().stream().filter(pin -> !pin.equals("N")).toList();
      all(pins, mark, "a source feeds from every line, and its case is earthed");
    } else if (!(part instanceof Part.Mains)) {
      all(part.pins(), mark, "a part with two pins works only between two wires");
    }
  }

  private static List<String> pins(DcOutput output) {
    return List.of(output.plus().value(), output.minus().value());
  }

  private void input(MainsInput input) {
    all(input.pins(), input.mark(), "the supply takes its mains there");
  }

  private void all(List<String> pins, Mark mark, String reason) {
    all(pins, mark, reason, WIRE_IT);
  }

  private void all(List<String> pins, Mark mark, String reason, String remedy) {
    List<String> others = pins.stream().filter(wired::contains).toList();
    for (String pin : pins) {
      looked++;
      if (!wired.contains(pin)) {
        String sentence = "No wire ends on %s: " + reason + ".";
        loose.add(new End(List.of(pin), mark, others, sentence, remedy));
      }
    }
  }

  /** The protective pin of a load on extra-low voltage, which one of class III has not. */
  private void low(Mark mark) {
    looked++;
    if (!wired.contains(Earthing.PE)) {
      loose.add(
          new End(
              List.of(Earthing.PE),
              mark,
              part.pins().stream().filter(wired::contains).toList(),
              "No wire ends on %s: it is no load of class III, as far as is written.",
              "Write class: III at %s if it is made for extra-low voltage; else wire %%s."
                  .formatted(part.name())));
    }
  }

  /** Both or neither. */
  private void pair(List<String> pins, Mark mark, String whose) {
    pins.stream()
        .filter(wired::contains)
        .findFirst()
        .ifPresent(used -> all(pins, mark, whose + " other pin is in use", orOff(used)));
  }

  private String orOff(String pin) {
    return "Wire %s, or take the wire off " + part.name() + "." + pin + ".";
  }

  private void pole(Pole pole) {
    pair(List.of(pole.from(), pole.to()), part.head().mark(), "the pole's");
  }

  /**
   * A contact with one wired end is loose, unless that end serves another contact that is whole: a
   * changeover mostly uses one of its two throws.
   */
  private void contacts(List<ContactSpec> all, ContactSpec contact) {
    boolean from = wired.contains(contact.from());
    boolean to = wired.contains(contact.to());
    if (from || to) {
      looked++;
    }
    if (from == to) {
      return;
    }
    String end = from ? contact.from() : contact.to();
    Map<String, Boolean> partners = new LinkedHashMap<>();
    for (ContactSpec other : all) {
      if (other.from().equals(end)) {
        partners.put(other.to(), wired.contains(other.to()));
      } else if (other.to().equals(end)) {
        partners.put(other.from(), wired.contains(other.from()));
      }
    }
    List<String> missing = List.copyOf(partners.keySet());
    boolean reported = loose.stream().anyMatch(known -> known.pins().equals(missing));
    if (!partners.containsValue(true) && !reported) {
      loose.add(
          new End(
              missing,
              contact.mark(),
              List.of(end),
              "No wire ends on %s, the other end of a contact in use.",
              orOff(end)));
    }
  }

  private void clamps(Part.TerminalStrip strip, Circuit circuit) {
    for (String pin : strip.pins()) {
      List<String> bridged =
          strip.bridged().stream()
              .filter(group -> group.contains(pin))
              .findFirst()
              .orElse(List.of(pin));
      int wires =
          bridged.stream()
              .mapToInt(clamp -> circuit.wiresAt(new Terminal(part.name(), clamp)).size())
              .sum();
      if (wired.contains(pin)) {
        looked++;
      }
      if (wires == 1 && wired.contains(pin)) {
        loose.add(
            new End(
                List.of(pin),
                strip.head().mark(),
                List.of(pin),
                "Only one wire ends on %s: it leads nowhere.",
                "Wire the other side of %s, or take the wire off it."));
      }
    }
  }
}
