// Over 250 lines: one method for each kind of part.
package org.coilwright.netlist;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.coilwright.netlist.Part.ContactForm;
import org.coilwright.netlist.Part.Head;
import org.coilwright.netlist.Part.Pole;
import org.coilwright.netlist.Site.MainsSupply;
import org.coilwright.netlist.Site.Phases;
import org.coilwright.netlist.Value.Incomplete;
import org.coilwright.netlist.Value.Many;
import org.coilwright.netlist.Value.Section;
import org.coilwright.quantity.Quantity;

/** Makes a {@link Part} of what was written about it. */
final class PartBuilder {
  private final Problems problems;
  private final Optional<MainsSupply> mains;
  private final boolean mainsWritten;
  private final DeviceBuilder devices;

  /**
   * For the parts of one netlist.
   *
   * @param mains empty if the site has none, or if they could not be read
   * @param mainsWritten true if something stands there
   */
  PartBuilder(Problems problems, Optional<MainsSupply> mains, boolean mainsWritten) {
    this.problems = problems;
    this.mains = mains;
    this.mainsWritten = mainsWritten;
    this.devices = new DeviceBuilder(problems);
  }

  /**
   * Builds one part.
   *
   * @param wired pins that wires name, for loads that say nothing about their pins
   * @throws Incomplete if something about it is wrong; a problem says what
   */
  Part build(Written<String> name, Section section, Set<String> wired) {
    int before = problems.reports();
    Part part = part(name, section, wired);
    if (before != problems.reports()) {
      throw new Incomplete();
    }
    return part;
  }

  private Part part(Written<String> name, Section section, Set<String> wired) {
    String is = section.mustText("is").value();
    Head head =
        new Head(
            name.value(),
            is,
            name.mark(),
            section.plain("label"),
            section.plain("note"),
            section.textIfKnown("asks-rcd"),
            section.textIfKnown("additional-protection"),
            is.equals("controller") || is.equals("dc-supply")
                ? section.quantity("rated-air")
                : Optional.empty(),
            section.textIfKnown("class"));
    return switch (is) {
      case "mains" -> new Part.Mains(head, mainsPins(name));
      case "source" ->
          new Part.Source(
              head,
              supplyPins(section.mustChoice("phases", Phases.class).value()),
              section.mustText("kind"),
              section.text("asks-rcd"),
              section.flag("islands"));
      case "controller" -> devices.controller(head, section);
      case "dc-supply" -> devices.dcSupply(head, section);
      case "relay", "contactor" -> new RelayBuilder(problems).relay(head, section);
      case "diode" ->
          new Part.Diode(
              head,
              List.of("A", "K"),
              section.quantity("reverse-voltage"),
              section.quantity("current"));
      case "varistor" -> new Part.Varistor(head, twoPins(), section.quantity("clamping-voltage"));
      case "snubber" ->
          new Part.Snubber(
              head, twoPins(), section.quantity("resistance"), section.quantity("capacitance"));
      case "resistor" ->
          new Part.Resistor(
              head, twoPins(), section.quantity("resistance"), section.quantity("power"));
      case "lamp" ->
          new Part.Lamp(head, twoPins(), section.quantity("voltage"), section.quantity("current"));
      case "fuse" ->
          new Part.Fuse(
              head,
              twoPins(),
              section.quantity("rating"),
              section.quantity("breaking-capacity"),
              section.quantity("breaking-capacity-dc"),
              section.text("family"),
              air(section));
      case "breaker" -> breaker(head, section);
      case "rcd" -> residualCurrentDevice(head, section);
      case "switch" -> {
        List<Pole> poles = poles(count(section), false);
        yield new Part.Switch(
            head,
            pins(poles),
            poles,
            form(section, ContactForm.NO),
            RelayBuilder.ratings(section),
            section.rating("least-load"),
            RelayBuilder.poleInsulation(section));
      }
      case "thermostat" -> thermal(head, section, Optional.empty());
      case "cut-out" -> thermal(head, section, section.text("reset"));
      case "terminals" -> terminals(head, section);
      case "heater" -> LoadBuilder.heater(head, section);
      case "motor", "transformer", "charger", "lighting", "load" ->
          LoadBuilder.load(head, section, wired);
      default -> throw new IllegalStateException("no such kind of part: " + is);
    };
  }

  private List<String> mainsPins(Written<String> name) {
    if (mains.isEmpty() && mainsWritten) {
      throw new Incomplete();
    }
    if (mains.isEmpty()) {
      problems.add(
          name.mark(),
          name.value() + " is the mains, and site: says nothing about the mains",
          "add mains: {phases: 1, voltage: 230 V ± 10 %} under site:");
      throw new Incomplete();
    }
    return supplyPins(mains.get().phases().value());
  }

  private static List<String> supplyPins(Phases phases) {
    return switch (phases) {
      case ONE -> List.of("L", "N", "PE");
      case SPLIT -> List.of("L1", "L2", "N", "PE");
      case THREE -> List.of("L1", "L2", "L3", "N", "PE");
    };
  }

  private Part breaker(Head head, Section section) {
    List<Pole> poles = protectivePoles(section);
    return new Part.Protective(
        head,
        pins(poles),
        poles,
        section.text("curve"),
        section.text("standard"),
        Optional.empty(),
        Optional.empty(),
        section.quantity("rating"),
        section.quantity("breaking-capacity"),
        section.quantity("breaking-capacity-dc"),
        air(section),
        Optional.empty(),
        section.quantity("overload-setting"),
        section.text("handle-tie"));
  }

  private Part residualCurrentDevice(Head head, Section section) {
    List<Pole> poles = protectivePoles(section);
    return new Part.Protective(
        head,
        pins(poles),
        poles,
        Optional.empty(),
        Optional.empty(),
        section.text("kind"),
        section.quantity("trip"),
        section.quantity("rating"),
        Optional.empty(),
        Optional.empty(),
        air(section),
        section.flag("both-directions"),
        Optional.empty(),
        Optional.empty());
  }

  private Part.DeviceAir air(Section section) {
    Optional<Written<Quantity>> working = section.quantity("working-air");
    working
        .filter(w -> w.value().isExact())
        .ifPresent(
            w ->
                problems.add(
                    w.mark(),
                    "working-air is the range in which the device works; "
                        + w.text()
                        + " is one temperature",
                    "write both ends: -5..40 °C"));
    Optional<Written<Quantity>> rated = section.quantity("rated-air");
    rated
        .filter(r -> working.filter(w -> r.value().high() > w.value().high()).isPresent())
        .ifPresent(
            r ->
                problems.add(
                    r.mark(),
                    "the rated current cannot hold at %s where the device works only in %s"
                        .formatted(r.text(), working.map(Written::text).orElse("")),
                    "look both up in its data sheet"));
    return new Part.DeviceAir(
        rated,
        working,
        section.knows("mounting") ? section.choice("mounting", Mounting.class) : Optional.empty());
  }

  private static Part thermal(Head head, Section section, Optional<Written<String>> reset) {
    List<Pole> poles = poles(count(section), false);
    return new Part.Thermal(
        head,
        pins(poles),
        poles,
        form(section, ContactForm.NC),
        section.quantity("opens-at"),
        reset,
        RelayBuilder.ratings(section),
        section.rating("least-load"),
        RelayBuilder.poleInsulation(section));
  }

  private Part terminals(Head head, Section section) {
    int count = section.written("count", Integer.class).orElseThrow(Incomplete::new).value();
    List<String> pins = IntStream.rangeClosed(1, count).mapToObj(String::valueOf).toList();
    List<List<String>> bridged = new ArrayList<>();
    for (Value item : section.items("bridged")) {
      List<String> group = new ArrayList<>();
      for (Value clamp : ((Many) item).items()) {
        Written<String> pin = Value.word(clamp);
        if (pins.contains(pin.value())) {
          group.add(pin.value());
        } else {
          problems.add(
              pin.mark(),
              head.name() + " has no clamp " + pin.value(),
              "its clamps are 1 to " + count);
        }
      }
      bridged.add(List.copyOf(group));
    }
    return new Part.TerminalStrip(head, pins, List.copyOf(bridged));
  }

  private static int count(Section section) {
    return section.written("poles", Integer.class).map(Written::value).orElse(1);
  }

  private static ContactForm form(Section section, ContactForm usual) {
    return section.plain("form").map(ContactForm::valueOf).orElse(usual);
  }

  private static List<Pole> protectivePoles(Section section) {
    String poles = section.mustText("poles").value();
    return poles(Integer.parseInt(poles.substring(0, 1)), poles.endsWith("+N"));
  }

  private static List<Pole> poles(int count, boolean neutral) {
    List<Pole> poles = new ArrayList<>();
    for (int i = 1; i <= count; i++) {
      poles.add(new Pole(String.valueOf(2 * i - 1), String.valueOf(2 * i), false));
    }
    if (neutral) {
      poles.add(new Pole("N1", "N2", true));
    }
    return List.copyOf(poles);
  }

  private static List<String> pins(List<Pole> poles) {
    return poles.stream().flatMap(pole -> List.of(pole.from(), pole.to()).stream()).toList();
  }

  private static List<String> twoPins() {
    return List.of("1", "2");
  }
}
