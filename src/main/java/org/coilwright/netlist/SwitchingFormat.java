package org.coilwright.netlist;

import static org.coilwright.netlist.Key.may;

import org.coilwright.netlist.Shape.Choice;
import org.coilwright.netlist.Shape.Fields;
import org.coilwright.netlist.Shape.Form;
import org.coilwright.netlist.Shape.Listing;
import org.coilwright.netlist.Shape.Measure;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Wanted;

/** The settings that decide when the controlled contact closes, as data. */
final class SwitchingFormat {
  private static final String CLOCK = "([01][0-9]|2[0-3]):[0-5][0-9]";
  private static final Measure WATTS = new Measure(Wanted.of(Dimension.POWER).orZero(), false);
  private static final Measure WAIT = new Measure(Wanted.of(Dimension.TIME).orZero(), false);
  private static final Measure LEVEL = new Measure(Wanted.of(Dimension.RATIO).orZero(), false);

  private SwitchingFormat() {}

  static Fields switching() {
    Fields start =
        Fields.of(
            "the start",
            may("export-above", WATTS, "Surplus that must be exceeded.", "3.4 kW"),
            may("for", WAIT, "How long the surplus must last.", "60 s"));
    Fields stop =
        Fields.of(
            "the stop",
            may("import-above", WATTS, "Import that must be exceeded.", "300 W"),
            may("for", WAIT, "How long the import must last.", "20 s"),
            may("battery-below", LEVEL, "Charge below which it stops.", "40 %"));
    Fields water =
        Fields.of(
            "the water",
            may("litres", Format.LITRES, "Volume, in litres if no unit is written.", "300"),
            may("from", Format.DEGREES, "Cold water temperature.", "12 °C"),
            may("to", Format.DEGREES, "Wanted temperature.", "60 °C"));
    Form window =
        Form.of(CLOCK + "-(" + CLOCK + "|24:00)", "a time window", "write it like \"13:00-14:00\"");
    Form output = Form.of(IntentParser.CONTACT, "a contact", "write part and output: U1.heat");
    return Fields.of(
        "the switching settings",
        may("output", output, "The controlled contact.", "U1.heat"),
        may("start", start, "When it closes.", "{export-above: 3.4 kW, for: 60 s}"),
        may("stop", stop, "When it opens.", "{import-above: 300 W, for: 20 s}"),
        may("shortest-run", WAIT, "Shortest time it stays closed.", "10 min"),
        may("longest-per-day", Format.TIME, "Longest time closed in a day.", "5 h"),
        may("always-on", new Listing(window, 0, 24), "Daily windows.", "[\"13:00-14:00\"]"),
        may("plant", plant(), "What the settings act on.", "{pv-peak: 9 kW}"),
        may("water", water, "The water to be heated.", "{litres: 300, from: 12 °C, to: 60 °C}"));
  }

  /** What the settings act on. */
  static Fields plant() {
    Fields battery =
        Fields.of(
            "a battery",
            may("capacity", Format.ENERGY, "Usable energy.", "10 kWh"),
            may("discharge", Format.WATTS, "Greatest power out.", "8 kW"),
            may("charge", Format.WATTS, "Greatest power in.", "5 kW"),
            may("settles-in", WAIT, "Time to follow a step of load.", "6 s"),
            may("floor", LEVEL, "Charge it is never drained below.", "15 %"),
            may(
                "settles",
                Choice.of("linear", "first-order"),
                "How it follows a step: in a straight line, or exponentially.",
                "linear"));
    return Fields.of(
        "the plant",
        may("pv-peak", WATTS, "Peak power of the panels.", "9 kW"),
        may("base-load", WATTS, "What the house always draws.", "450 W"),
        may("largest-step", WATTS, "Biggest other load that can stop at once.", "7.4 kW"),
        may("battery", battery, "The battery.", "{capacity: 10 kWh}"));
  }
}
