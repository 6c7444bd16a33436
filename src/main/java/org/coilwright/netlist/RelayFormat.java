package org.coilwright.netlist;

import static org.coilwright.netlist.Key.may;
import static org.coilwright.netlist.Key.must;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.netlist.Shape.Choice;
import org.coilwright.netlist.Shape.Fields;
import org.coilwright.netlist.Shape.Form;
import org.coilwright.netlist.Shape.Listing;
import org.coilwright.netlist.Shape.Measure;
import org.coilwright.netlist.Shape.Named;
import org.coilwright.netlist.Shape.Rated;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Wanted;

/** Coils, contacts and all else about relays and contactors, as data. */
final class RelayFormat {
  /** Utilization categories of IEC 60947 and IEC 61095. */
  private static final List<String> CATEGORIES =
      List.of(
          "AC-1", "AC-2", "AC-3", "AC-3e", "AC-4", "AC-5a", "AC-5b", "AC-6a", "AC-6b", "AC-7a",
          "AC-7b", "AC-7c", "AC-7d", "AC-8a", "AC-8b", "AC-12", "AC-13", "AC-14", "AC-15", "AC-20",
          "AC-21", "AC-22", "AC-23", "AC-51", "AC-53a", "AC-55a", "AC-55b", "DC-1", "DC-3", "DC-5",
          "DC-6", "DC-12", "DC-13", "DC-14", "DC-20", "DC-21", "DC-22", "DC-23");

  static final Choice CATEGORY = new Choice(CATEGORIES);
  static final Choice FORM = Choice.of("NO", "NC");

  private static final Form POLARITY =
      Form.of("none|" + WirePhrase.PIN + " (plus|minus)", "a polarity", "write none, or A1 plus");
  private static final Measure COIL_POWER =
      Format.measure(Dimension.APPARENT_POWER, Dimension.POWER);
  private static final Named RATINGS =
      new Named("a rating", CATEGORY, Format.rated(Dimension.CURRENT, Dimension.VOLTAGE), 1);

  static final Key KEY_RATINGS =
      may(
          "ratings",
          RATINGS,
          "Current by utilization category.",
          "{AC-1: 16 A at 250 V, AC-15: 3 A at 230 V, DC-13: 1 A at 30 V}");
  static final Key KEY_LEAST_LOAD =
      may(
          "least-load",
          Format.rated(Dimension.CURRENT, Dimension.VOLTAGE),
          "Least load the contact switches reliably.",
          "100 mA at 12 V");
  static final Key KEY_LEAKAGE =
      may(
          "leakage",
          new Measure(Wanted.of(Dimension.CURRENT).orZero(), false),
          "Current through the open contact.",
          "1 mA");

  private static final Choice GRADE = Choice.of("functional", "basic", "double", "reinforced");
  private static final Key BETWEEN_POLES =
      may(
          "between-poles",
          GRADE,
          "Kind of insulation between its poles or contacts.",
          "reinforced");
  private static final Key TEST = may("test", Format.VOLTS, "Test voltage.", "4 kV");
  private static final Key CLEARANCE = may("clearance", Format.LENGTH, "Clearance.", "8 mm");
  private static final Key CREEPAGE = may("creepage", Format.LENGTH, "Creepage distance.", "8 mm");

  /** Of a device with several poles or outputs and no coil. */
  static final Key KEY_POLE_INSULATION =
      may(
          "insulation",
          Fields.of("the insulation of poles", BETWEEN_POLES, TEST, CLEARANCE, CREEPAGE),
          "Insulation between its poles, outputs and own supply.",
          "{between-poles: reinforced}");

  private RelayFormat() {}

  /** The keys of a relay or a contactor, besides those of every part. */
  static Key[] keys() {
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
                GRADE,
                "Kind of insulation between coil and contacts.",
                "reinforced"),
            BETWEEN_POLES,
            TEST,
            CLEARANCE,
            CREEPAGE,
            may("voltage", Format.VOLTS, "Rated insulation voltage.", "250 V"));
    List<String> lives = new ArrayList<>(CATEGORIES);
    lives.add("mechanical");
    return new Key[] {
      must("coil", coil(), "Its coil.", "{pins: [A1, A2], voltage: 24 V DC, resistance: 660 Ω}"),
      may("contacts", new Listing(contact, 1, 40), "Its contacts.", "[{pins: [11, 14], form: NO}]"),
      may("poles", new Listing(Format.TWO_PINS, 1, 12), "Its main poles.", "[[1, 2], [3, 4]]"),
      KEY_RATINGS,
      may(
          "life",
          new Named(
              "a number of cycles",
              new Choice(List.copyOf(lives)),
              Format.rated(Dimension.COUNT, Dimension.CURRENT),
              1),
          "Cycles it lasts, a closing and an opening each; data sheets may count both.",
          "{AC-1: 50000 at 16 A, mechanical: 10000000}"),
      may("mounting", Choice.of(Mounting.class), "How it sits on the rail.", "spaced"),
      may("rated-air", Format.DEGREES, "Air temperature its ratings hold at.", "40 °C"),
      may("insulation", insulation, "Insulation of the coil.", "{coil-to-contacts: reinforced}"),
      may(
          "loss",
          new Rated(Wanted.of(Dimension.POWER), Optional.empty(), true),
          "Heat it gives off.",
          "1.6 W per pole"),
      may("backup", backup, "Short-circuit protection its maker asks for.", "{breaker: 25 A}")
    };
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
        may(
            "release",
            Format.SHARE,
            "Release voltage, of the rated one: surely out at its low end, in above its high.",
            "10..50 %"),
        may("polarity", POLARITY, "none, or which pin must be plus.", "A1 plus"),
        may(
            "suppression",
            Choice.of("none", "diode", "diode-with-zener", "varistor", "rc", "resistor"),
            "What is built in against the turn-off voltage.",
            "none"),
        may("time-constant", Format.TIME, "L/R of the coil.", "12 ms"),
        may("pick-up", COIL_POWER, "Power while pulling in.", "14 VA"),
        may("hold", COIL_POWER, "Power while held.", "4 VA"),
        may("hold-power", Format.WATTS, "Active power while held.", "1.6 W"),
        may("operate-time", Format.TIME, "From coil on to contacts over.", "8..15 ms"),
        may("release-time", Format.TIME, "From coil off to contacts back.", "3..8 ms"),
        may(
            "clamping-voltage",
            Format.VOLTS,
            "Voltage of the zener or varistor that is built in across it.",
            "24 V"));
  }
}
