package org.coilwright.netlist;

import static org.coilwright.netlist.Key.may;
import static org.coilwright.netlist.Key.must;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.netlist.Shape.Choice;
import org.coilwright.netlist.Shape.Fields;
import org.coilwright.netlist.Shape.Form;
import org.coilwright.netlist.Shape.Listing;
import org.coilwright.netlist.Shape.Measure;
import org.coilwright.netlist.Shape.Named;
import org.coilwright.netlist.Shape.Rated;
import org.coilwright.netlist.Shape.Whole;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Wanted;

/** Every kind of part with its keys, as data. */
final class PartFormat {
  /** Utilization categories of IEC 60947 and IEC 61095. */
  private static final List<String> CATEGORIES =
      List.of(
          "AC-1", "AC-2", "AC-3", "AC-3e", "AC-4", "AC-5a", "AC-5b", "AC-6a", "AC-6b", "AC-7a",
          "AC-7b", "AC-7c", "AC-7d", "AC-8a", "AC-8b", "AC-12", "AC-13", "AC-14", "AC-15", "AC-20",
          "AC-21", "AC-22", "AC-23", "AC-51", "AC-53a", "AC-55a", "AC-55b", "DC-1", "DC-3", "DC-5",
          "DC-6", "DC-12", "DC-13", "DC-14", "DC-20", "DC-21", "DC-22", "DC-23");

  private static final Choice CATEGORY = new Choice(CATEGORIES);
  private static final Choice PROTECTIVE_POLES = Choice.of("1", "1+N", "2", "3", "3+N", "4");
  private static final Choice FORM = Choice.of("NO", "NC");
  private static final Choice CONNECTION =
      Choice.of("single", "star", "star-with-neutral", "delta");
  private static final Form POLARITY =
      new Form("none|" + WirePhrase.PIN + " (plus|minus)", "a polarity", "write none, or A1 plus");
  private static final Measure COIL_POWER =
      Format.measure(Dimension.APPARENT_POWER, Dimension.POWER);

  private static final Named RATINGS =
      new Named("a rating", CATEGORY, Format.rated(Dimension.CURRENT, Dimension.VOLTAGE), 1);

  private static final Key KEY_RATINGS =
      may("ratings", RATINGS, "Current by utilization category.", "{AC-1: 16 A at 250 V}");
  private static final Key KEY_LEAST_LOAD =
      may(
          "least-load",
          Format.rated(Dimension.CURRENT, Dimension.VOLTAGE),
          "Least load the contact switches reliably.",
          "100 mA at 12 V");
  private static final Key KEY_LEAKAGE =
      may(
          "leakage",
          new Measure(Wanted.of(Dimension.CURRENT).orZero(), false),
          "Current through the open contact.",
          "1 mA");

  private PartFormat() {}

  static Map<String, Fields> kinds() {
    Map<String, Fields> kinds = new LinkedHashMap<>();
    kinds.put("mains", part("mains"));
    kinds.put("controller", controller());
    kinds.put("dc-supply", dcSupply());
    kinds.put("relay", relay("relay"));
    kinds.put("contactor", relay("contactor"));
    kinds.put(
        "diode",
        part(
            "a diode",
            may("reverse-voltage", Format.VOLTS, "Peak reverse voltage.", "1 kV"),
            may("current", Format.AMPS, "Forward current.", "1 A")));
    kinds.put(
        "varistor",
        part("a varistor", may("clamping-voltage", Format.VOLTS, "Clamping voltage.", "60 V")));
    kinds.put(
        "snubber",
        part(
            "a snubber",
            may("resistance", Format.OHMS, "Resistor in series.", "100 Ω"),
            may("capacitance", Format.measure(Dimension.CAPACITANCE), "Capacitor.", "100 nF")));
    kinds.put(
        "resistor",
        part(
            "a resistor",
            may("resistance", Format.OHMS, "Resistance.", "1 kΩ"),
            may("power", Format.WATTS, "Rated power.", "0.5 W")));
    kinds.put(
        "lamp",
        part(
            "a lamp",
            may("voltage", Format.VOLTS, "Rated voltage.", "24 V"),
            may("current", Format.AMPS, "Current at rated voltage.", "15 mA")));
    kinds.put(
        "fuse",
        part(
            "a fuse",
            may("rating", Format.AMPS, "Rated current.", "2 A"),
            may("breaking-capacity", Format.AMPS, "Breaking capacity.", "1.5 kA")));
    kinds.put("breaker", breaker());
    kinds.put("rcd", residualCurrentDevice());
    kinds.put("switch", part("a switch", poles(6), form("NO")));
    kinds.put("thermostat", part("a thermostat", poles(3), form("NC"), opensAt(), KEY_RATINGS));
    kinds.put(
        "cut-out",
        part(
            "a cut-out",
            poles(3),
            form("NC"),
            opensAt(),
            may("reset", Choice.of("manual", "automatic"), "How it is reset.", "manual"),
            KEY_RATINGS));
    kinds.put("terminals", terminals());
    kinds.put("heater", heater());
    for (String load : List.of("motor", "transformer", "charger", "lighting", "load")) {
      kinds.put(load, load(load));
    }
    return Collections.unmodifiableMap(kinds);
  }

  private static Fields controller() {
    Fields output =
        Fields.of(
            "an output",
            must("pins", Format.TWO_PINS, "Its two pins.", "[9, 10]"),
            must("form", FORM, "NO closes when the output is on, NC opens.", "NO"),
            KEY_RATINGS,
            KEY_LEAST_LOAD,
            KEY_LEAKAGE);
    return part(
        "a controller",
        may(
            "aux-supply",
            directOutput("an auxiliary supply"),
            "Its auxiliary supply output.",
            "{plus: 5, minus: 8, voltage: 24 V DC, limit: 100 mA, isolation: SELV}"),
        may(
            "outputs",
            new Named("an output", Format.DESIGNATION, output, 0),
            "Volt-free outputs by name.",
            "{heat: {pins: [9, 10], form: NO}}"),
        may(
            "reserved",
            new Named("a pin", Format.PIN, Format.TEXT, 0),
            "Pins kept for another use, with that use.",
            "{11: bus}"),
        may("mains", mainsInput(), "Where it takes its own mains.", "{pins: [L, N]}"));
  }

  private static Fields dcSupply() {
    return part(
        "a supply unit",
        may("input", mainsInput(), "Its mains input.", "{pins: [L, N], voltage: 230 V}"),
        must(
            "output",
            directOutput("an output"),
            "Its direct-voltage output.",
            "{plus: \"+\", minus: \"-\", voltage: 24 V DC, limit: 1 A, isolation: SELV}"));
  }

  private static Fields relay(String kind) {
    Fields contact =
        Fields.of(
                "a contact",
                may("pins", Format.TWO_PINS, "Both pins, for a contact of one form.", "[13, 14]"),
                may("form", FORM, "What it does when the coil is on.", "NO"),
                may("common", Format.PIN, "Common pin of a changeover contact.", "11"),
                may("NC", Format.PIN, "Pin that is joined to common while the coil is off.", "12"),
                may("NO", Format.PIN, "Pin that is joined to common while the coil is on.", "14"),
                KEY_RATINGS,
                KEY_LEAST_LOAD,
                KEY_LEAKAGE,
                may("mirror", Format.YES_NO, "True for a mirror contact.", "false"))
            .either("pins form", "common NC NO");
    Fields backup =
        Fields.of(
            "the back-up protection",
            may("breaker", Format.AMPS, "Largest breaker allowed upstream.", "25 A"),
            may("fuse", Format.AMPS, "Largest fuse allowed upstream.", "35 A"));
    Fields insulation =
        Fields.of(
            "the insulation",
            may(
                "coil-to-contacts",
                Choice.of("functional", "basic", "double", "reinforced"),
                "Kind of insulation between coil and contacts.",
                "reinforced"),
            may("test", Format.VOLTS, "Test voltage.", "4 kV"),
            may("clearance", Format.LENGTH, "Clearance.", "8 mm"),
            may("creepage", Format.LENGTH, "Creepage distance.", "8 mm"),
            may("voltage", Format.VOLTS, "Rated insulation voltage.", "250 V"));
    List<String> lives = new ArrayList<>(CATEGORIES);
    lives.add("mechanical");
    return part(
        "a " + kind,
        must("coil", coil(), "Its coil.", "{pins: [A1, A2], voltage: 24 V DC, resistance: 660 Ω}"),
        may(
            "contacts",
            new Listing(contact, 1, 40),
            "Its contacts.",
            "[{pins: [11, 14], form: NO}]"),
        may("poles", new Listing(Format.TWO_PINS, 1, 12), "Its main poles.", "[[1, 2], [3, 4]]"),
        KEY_RATINGS,
        may(
            "life",
            new Named(
                "a number of operations",
                new Choice(List.copyOf(lives)),
                Format.rated(Dimension.COUNT, Dimension.CURRENT),
                1),
            "Operations it lasts.",
            "{AC-1: 50000 at 16 A, mechanical: 10000000}"),
        may("mounting", Choice.of("side-by-side", "spaced"), "How it sits on the rail.", "spaced"),
        may("rated-air", Format.DEGREES, "Air temperature its ratings hold at.", "40 °C"),
        may("insulation", insulation, "Insulation of the coil.", "{coil-to-contacts: reinforced}"),
        may(
            "loss",
            new Rated(Wanted.of(Dimension.POWER), Optional.empty(), true),
            "Heat it gives off.",
            "1.6 W per pole"),
        may("backup", backup, "Short-circuit protection its maker asks for.", "{breaker: 25 A}"));
  }

  private static Fields coil() {
    return Fields.of(
        "a coil",
        must("pins", Format.TWO_PINS, "Its two pins.", "[A1, A2]"),
        must(
            "voltage",
            new Measure(Wanted.of(Dimension.VOLTAGE), true),
            "Rated voltage, AC or DC.",
            "24 V DC"),
        may("resistance", Format.OHMS, "Resistance at 20 °C.", "660 Ω ± 10 %"),
        may("power", Format.WATTS, "Power at rated voltage.", "0.9 W"),
        may("range", Format.SHARE, "Operative range, of the rated voltage.", "80..110 %"),
        may(
            "operate",
            Format.rated(Dimension.RATIO, Dimension.TEMPERATURE),
            "Cold pull-in voltage, of the rated voltage.",
            "70 % at 20 °C"),
        may("release", Format.SHARE, "Release voltage, of the rated voltage.", "10 %"),
        may("polarity", POLARITY, "none, or which pin must be plus.", "A1 plus"),
        may(
            "suppression",
            Choice.of("none", "diode", "diode-with-zener", "varistor", "rc", "resistor"),
            "What is built in against the turn-off voltage.",
            "none"),
        may("time-constant", Format.TIME, "L/R of the coil.", "12 ms"),
        may("pick-up", COIL_POWER, "Power while pulling in.", "14 VA"),
        may("hold", COIL_POWER, "Power while held.", "4 VA"),
        may("hold-power", Format.WATTS, "Active power while held.", "1.6 W"));
  }

  private static Fields breaker() {
    return part(
        "a breaker",
        may("curve", Choice.of("B", "C", "D"), "Tripping characteristic.", "B"),
        may("rating", Format.AMPS, "Rated current.", "16 A"),
        must("poles", PROTECTIVE_POLES, "Poles.", "1+N"));
  }

  private static Fields residualCurrentDevice() {
    return part(
        "a residual-current device",
        may("kind", Choice.of("AC", "A", "F", "B"), "What currents it detects.", "A"),
        may("trip", Format.AMPS, "Rated residual current.", "30 mA"),
        may("rating", Format.AMPS, "Rated current.", "40 A"),
        must("poles", PROTECTIVE_POLES, "Poles.", "3+N"));
  }

  private static Fields terminals() {
    Listing bridged = new Listing(new Listing(Format.PIN, 2, 200), 0, 100);
    return part(
        "a terminal strip",
        must("count", new Whole(1, 200), "How many clamps.", "6"),
        may("bridged", bridged, "Clamps that are joined.", "[[1, 2, 3]]"));
  }

  private static Fields heater() {
    Fields vessel =
        Fields.of(
            "a vessel",
            may("litres", Format.LITRES, "Volume, in litres if no unit is written.", "300"),
            may("closed", Format.YES_NO, "True if water cannot escape freely.", "true"));
    return part(
        "a heater",
        may("power", Format.WATTS, "Rated power of the whole.", "9 kW"),
        may("voltage", Format.VOLTS, "Rated voltage.", "400 V"),
        must("connection", CONNECTION, "How its elements are joined.", "star"),
        may("vessel", vessel, "What it heats.", "{litres: 300, closed: true}"),
        may("kind", Choice.of("metal-sheathed", "carbide", "ptc"), "Kind of element.", "ptc"));
  }

  private static Fields load(String kind) {
    return part(
        kind.equals("load") ? "a load" : "a " + kind + " load",
        may("power", Format.WATTS, "Rated power.", "1.5 kW"),
        may("current", Format.AMPS, "Rated current.", "3.5 A"),
        may("voltage", Format.VOLTS, "Rated voltage.", "400 V"),
        may("connection", CONNECTION, "Which pins it has; else taken from its wires.", "delta"),
        may(
            "power-factor",
            new Measure(Wanted.of(Dimension.RATIO).orBare(), false),
            "Power factor.",
            "0.85"),
        may("category", CATEGORY, "Utilization category it asks for.", "AC-3"),
        may(
            "inrush",
            new Rated(
                Wanted.of(Dimension.COUNT, Dimension.CURRENT),
                Optional.of(Wanted.of(Dimension.TIME)),
                false),
            "Starting current, as a multiple or in A.",
            "8 x for 5 s"));
  }

  private static Fields mainsInput() {
    return Fields.of(
        "a mains input",
        must("pins", new Listing(Format.PIN, 2, 3), "L and N, then PE if it has one.", "[L, N]"),
        may("voltage", Format.VOLTS, "Rated voltage.", "230 V"));
  }

  private static Fields directOutput(String noun) {
    return Fields.of(
        noun,
        must("plus", Format.PIN, "Pin of the plus pole.", "5"),
        must("minus", Format.PIN, "Pin of the minus pole.", "8"),
        may("voltage", Format.VOLTS, "Voltage with its tolerance.", "24 V DC ± 10 %"),
        may("limit", Format.AMPS, "Greatest current.", "100 mA"),
        may(
            "isolation",
            Choice.of("SELV", "PELV", "none"),
            "How it is kept apart from the mains.",
            "SELV"),
        may("ripple", Format.SHARE, "Ripple, peak to peak.", "5 %"));
  }

  private static Key poles(int most) {
    return may("poles", new Whole(1, most), "How many; 1 if not written.", "1");
  }

  private static Key form(String usual) {
    return may("form", FORM, "Form of its contacts; " + usual + " if not written.", usual);
  }

  private static Key opensAt() {
    return may("opens-at", Format.DEGREES, "Temperature at which it opens.", "60 °C");
  }

  private static Fields part(String noun, Key... own) {
    List<Key> keys =
        new ArrayList<>(
            List.of(
                must("is", Format.TEXT, "What the part is.", "relay"),
                may("label", Format.TEXT, "What it is called on site.", "boiler"),
                may("type", Format.TEXT, "Name of a type; keys written here override it.", "small"),
                may("note", Format.TEXT, "Anything else.", "left row")));
    keys.addAll(Arrays.asList(own));
    return new Fields(noun, List.copyOf(keys), List.of());
  }
}
