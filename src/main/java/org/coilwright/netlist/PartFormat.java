// Over 250 lines: the keys of every kind of part, as data.
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
import org.coilwright.netlist.Shape.Listing;
import org.coilwright.netlist.Shape.Measure;
import org.coilwright.netlist.Shape.Named;
import org.coilwright.netlist.Shape.Rated;
import org.coilwright.netlist.Shape.Whole;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Wanted;

/** Every kind of part with its keys, as data. */
final class PartFormat {
  private static final Choice PROTECTIVE_POLES = Choice.of("1", "1+N", "2", "3", "3+N", "4");
  static final Choice CONNECTION = Choice.of(Part.Connection.class);

  private static final Choice RCD_KIND = Choice.of("AC", "A", "F", "B");
  private static final Key RATED_AIR =
      may("rated-air", Format.DEGREES, "Air up to which its rated current holds.", "30 °C");
  private static final Key WORKS_UP_TO =
      may("rated-air", Format.DEGREES, "Air up to which it works.", "55 °C");
  private static final Key WORKING_AIR =
      may("working-air", Format.DEGREES, "Air in which it works, both ends.", "-5..40 °C");
  private static final Key BREAKING_DC =
      may(
          "breaking-capacity-dc",
          Format.AMPS,
          "Direct current that it breaks at the voltage here, as marked on it.",
          "1 kA");
  private static final Key MOUNTING =
      may("mounting", Choice.of(Mounting.class), "How it sits on the rail.", "spaced");
  private static final Key ASKS_RCD =
      may("asks-rcd", RCD_KIND, "Residual-current device its maker asks for.", "B");
  private static final Key ADDITIONAL =
      may(
          "additional-protection",
          Choice.of("bathroom", "socket-outlet", "outdoors", "dwelling-lighting"),
          "Why 30 mA are asked for where it stands.",
          "bathroom");

  private static final Key CLASS =
      may(
          "class",
          Choice.of("I", "II", "III"),
          "Class of protection: I has a protective conductor, II needs none, III is SELV.",
          "I");

  private PartFormat() {}

  static Map<String, Fields> kinds() {
    Map<String, Fields> kinds = new LinkedHashMap<>();
    kinds.put("mains", part("mains"));
    kinds.put("source", source());
    kinds.put("controller", controller());
    kinds.put("dc-supply", dcSupply());
    kinds.put("relay", part("a relay", RelayFormat.keys()));
    kinds.put("contactor", part("a contactor", RelayFormat.keys()));
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
            may("breaking-capacity", Format.AMPS, "Breaking capacity on the mains.", "1.5 kA"),
            BREAKING_DC,
            may(
                "family",
                Choice.of("gG", "BS 88-2", "BS 88-3", "BS 1362"),
                "What it is made to, which says how fast it opens; else the slowest counts.",
                "gG"),
            RATED_AIR,
            WORKING_AIR));
    kinds.put("breaker", breaker());
    kinds.put("rcd", residualCurrentDevice());
    kinds.put(
        "switch",
        part(
            "a switch",
            poles(6),
            form("NO"),
            RelayFormat.KEY_RATINGS,
            RelayFormat.KEY_LEAST_LOAD,
            RelayFormat.KEY_POLE_INSULATION));
    kinds.put(
        "thermostat",
        part(
            "a thermostat",
            poles(3),
            form("NC"),
            opensAt(),
            RelayFormat.KEY_RATINGS,
            RelayFormat.KEY_LEAST_LOAD,
            RelayFormat.KEY_POLE_INSULATION));
    kinds.put(
        "cut-out",
        part(
            "a cut-out",
            poles(3),
            form("NC"),
            opensAt(),
            may("reset", Choice.of("manual", "automatic"), "How it is reset.", "manual"),
            RelayFormat.KEY_RATINGS,
            RelayFormat.KEY_LEAST_LOAD,
            RelayFormat.KEY_POLE_INSULATION));
    kinds.put("terminals", terminals());
    kinds.put("heater", heater());
    for (String load : List.of("motor", "transformer", "charger", "lighting", "load")) {
      kinds.put(load, load(load));
    }
    return Collections.unmodifiableMap(kinds);
  }

  private static Fields source() {
    return part(
        "a source",
        must("kind", Choice.of("inverter", "battery", "generator"), "What it is.", "inverter"),
        must("phases", Format.PHASES, "Lines: 1, 3 or split.", "1"),
        may(
            "asks-rcd",
            Choice.of("A", "F", "B"),
            "Kind of residual-current device its maker asks for.",
            "B"),
        may("islands", Format.YES_NO, "True if it goes on feeding when the mains fail.", "true"));
  }

  private static Fields controller() {
    Fields output =
        Fields.of(
            "an output",
            must("pins", Format.TWO_PINS, "Its two pins.", "[1, 2]"),
            must("form", RelayFormat.FORM, "NO closes when the output is on, NC opens.", "NO"),
            RelayFormat.KEY_RATINGS,
            RelayFormat.KEY_LEAST_LOAD,
            RelayFormat.KEY_LEAKAGE);
    return part(
        "a controller",
        may(
            "aux-supply",
            directOutput("an auxiliary supply"),
            "Its auxiliary supply output.",
            "{plus: 3, minus: 4, voltage: 24 V DC, limit: 100 mA, isolation: SELV}"),
        may(
            "outputs",
            new Named("an output", Format.DESIGNATION, output, 0),
            "Volt-free outputs by name.",
            "{heat: {pins: [1, 2], form: NO}}"),
        may(
            "reserved",
            new Named("a pin", Format.PIN, Format.TEXT, 0),
            "Pins kept for another use, with that use.",
            "{11: bus}"),
        may(
            "mains",
            mainsInput(),
            "Where it takes its own mains.",
            "{pins: [L, N], voltage: 230 V}"),
        ASKS_RCD,
        WORKS_UP_TO,
        RelayFormat.KEY_POLE_INSULATION);
  }

  private static Fields dcSupply() {
    return part(
        "a supply unit",
        may("input", mainsInput(), "Its mains input.", "{pins: [L, N], voltage: 230 V}"),
        must(
            "output",
            directOutput("an output"),
            "Its direct-voltage output.",
            "{plus: \"+\", minus: \"-\", voltage: 24 V DC, limit: 1 A, isolation: SELV}"),
        ASKS_RCD,
        WORKS_UP_TO);
  }

  private static Fields breaker() {
    return part(
        "a breaker",
        may("curve", Choice.of("B", "C", "D"), "Tripping characteristic.", "B"),
        may(
            "standard",
            Choice.of("IEC 60898-1", "IEC 60947-2", "UL 489"),
            "What it is made to; IEC 60898-1 if not written, with practice nec UL 489.",
            "IEC 60898-1"),
        may("rating", Format.AMPS, "Rated current.", "16 A"),
        may(
            "breaking-capacity",
            Format.AMPS,
            "Short-circuit current that it breaks at the voltage here, as marked on it.",
            "6 kA"),
        BREAKING_DC,
        must("poles", PROTECTIVE_POLES, "Poles.", "1+N"),
        may(
            "overload-setting",
            Format.AMPS,
            "Current that the overload release of a motor-protective breaker is set to.",
            "3.4 A"),
        may(
            "handle-tie",
            Format.TEXT,
            "A word shared by breakers whose handles are tied; each still trips alone.",
            "T1"),
        RATED_AIR,
        WORKING_AIR,
        MOUNTING);
  }

  private static Fields residualCurrentDevice() {
    return part(
        "a residual-current device",
        may("kind", RCD_KIND, "What currents it detects.", "A"),
        may("trip", Format.AMPS, "Rated residual current.", "30 mA"),
        may("rating", Format.AMPS, "Rated current.", "40 A"),
        must("poles", PROTECTIVE_POLES, "Poles.", "3+N"),
        RATED_AIR,
        WORKING_AIR,
        may(
            "both-directions",
            Format.YES_NO,
            "True if its maker states that it suits current in both directions.",
            "true"));
  }

  private static Fields terminals() {
    Listing bridged = new Listing(new Listing(Format.PIN, 2, 200), 0, 100);
    return part(
        "a terminal strip",
        must("count", new Whole(1, 200), "How many clamps.", "6"),
        may("bridged", bridged, "Clamps that are joined.", "[[1, 2, 3]]"));
  }

  private static Fields heater() {
    return part(
        "a heater",
        may("power", Format.WATTS, "Rated power of the whole.", "9 kW"),
        may("voltage", Format.VOLTS, "Rated voltage.", "400 V"),
        must("connection", CONNECTION, "How its elements are joined.", "star"),
        may("vessel", vessel(), "What it heats.", "{litres: 300, closed: true}"),
        may("kind", new Choice(Part.Heater.KINDS), "Kind of element.", "ptc"),
        ASKS_RCD,
        ADDITIONAL,
        CLASS);
  }

  /** What a heater heats. */
  static Fields vessel() {
    return Fields.of(
        "a vessel",
        may("litres", Format.LITRES, "Volume, in litres if no unit is written.", "300"),
        may("closed", Format.YES_NO, "True if water cannot escape freely.", "true"),
        may(
            "relief",
            Format.DEGREES,
            "Temperatures between which its relief valve opens.",
            "90..95 °C"),
        may(
            "open-vent",
            Format.YES_NO,
            "True if a vent that is always open leads steam away.",
            "true"),
        may(
            "cistern",
            Choice.of("metal", "plastic"),
            "What the feed cistern, or the open vessel if it has none, is made of.",
            "metal"));
  }

  private static Fields load(String kind) {
    List<Key> own = new ArrayList<>();
    Collections.addAll(
        own,
        may("power", Format.WATTS, "Rated power.", "1.5 kW"),
        may("current", Format.AMPS, "Rated current.", "3.5 A"),
        may("voltage", Format.VOLTS, "Rated voltage.", "400 V"),
        may("connection", CONNECTION, "Which pins it has; else taken from its wires.", "delta"),
        may(
            "power-factor",
            new Measure(Wanted.of(Dimension.RATIO).orBare(), false),
            "Power factor.",
            "0.85"),
        may("category", RelayFormat.CATEGORY, "Utilization category it asks for.", "AC-3"),
        may(
            "inrush",
            new Rated(
                Wanted.of(Dimension.COUNT, Dimension.CURRENT),
                Optional.of(Wanted.of(Dimension.TIME)),
                false),
            "Starting current, as a multiple or in A.",
            "8 x for 5 s"),
        ASKS_RCD,
        ADDITIONAL,
        CLASS);
    if (kind.equals("motor")) {
      own.add(
          may(
              "thermal-protector",
              Format.YES_NO,
              "True if a thermal protector inside opens the motor's own circuit.",
              "true"));
    }
    return part(kind.equals("load") ? "a load" : "a " + kind + " load", own.toArray(Key[]::new));
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
    return may(
        "form", RelayFormat.FORM, "Form of its contacts; " + usual + " if not written.", usual);
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
    return Fields.of(noun, keys);
  }
}
