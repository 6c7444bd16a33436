package org.coilwright.netlist;

import static org.coilwright.netlist.Key.may;
import static org.coilwright.netlist.Key.must;

import org.coilwright.netlist.Shape.Choice;
import org.coilwright.netlist.Shape.Either;
import org.coilwright.netlist.Shape.Fields;
import org.coilwright.netlist.Shape.Form;
import org.coilwright.netlist.Shape.Measure;
import org.coilwright.netlist.Shape.Whole;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Wanted;

/** What {@code draft} is told, version 1, as data: the same shapes as those of a netlist. */
final class BriefFormat {
  static final int VERSION = 1;

  private static final Measure DISTANCE = new Measure(Wanted.of(Dimension.LENGTH).orZero(), false);

  private static final Fields MAINS =
      Fields.of(
          "the mains",
          may("phases", Format.PHASES, "Lines: 1, 3 or split.", "3"),
          may(
              "voltage",
              new Shape.MainsVoltage(),
              "Line to neutral for one phase, line to line for three; both for split.",
              "400 V ± 10 %"),
          may("frequency", Format.measure(Dimension.FREQUENCY), "Frequency.", "50 Hz"),
          may(
              "earthing",
              Choice.of("TN-S", "TN-C-S", "TN-C", "TT", "IT"),
              "Earthing system.",
              "TN-S"),
          may("fault-current", Format.AMPS, "Prospective fault current at the board.", "2.5 kA"),
          may("loop-impedance", Format.OHMS, "Earth fault loop impedance at the board.", "0.6 Ω"));

  private static final Fields LOAD =
      Fields.of(
          "the load",
          must("power", Format.WATTS, "Rated power, from its nameplate.", "9 kW"),
          must("voltage", Format.VOLTS, "Rated voltage, from its nameplate.", "400 V"),
          may("connection", PartFormat.CONNECTION, "How its elements are joined.", "star"),
          may("kind", new Choice(Part.Heater.KINDS), "Kind of element.", "metal-sheathed"),
          may("starts-per-day", new Whole(1, 10_000), "Times it starts in a day.", "12"));

  private static final Fields SUPPLY =
      Fields.of(
          "an auxiliary supply",
          must("voltage", new Measure(Wanted.of(Dimension.VOLTAGE), true), "Voltage.", "24 V DC"),
          must("limit", Format.AMPS, "Greatest current.", "200 mA"),
          may("isolation", Choice.of("SELV", "PELV", "none"), "How it is kept apart.", "SELV"));

  private static final Fields CONTROLLER =
      Fields.of(
          "the controller",
          may(
              "supply",
              new Either(none("an auxiliary supply", "{voltage: 24 V DC, limit: 200 mA}"), SUPPLY),
              "Its auxiliary supply, or none.",
              "{voltage: 24 V DC, limit: 200 mA}"),
          must(
              "contact",
              Format.TEXT,
              "Its volt-free contact, in the words of its manual.",
              "0.5 A at 30 V DC-13"),
          may(
              "least-load",
              Format.rated(Dimension.CURRENT, Dimension.VOLTAGE),
              "Least load its contact switches reliably.",
              "1 mA at 5 V"));

  private static final Fields DISTANCES =
      Fields.of(
          "the distances",
          may("board-to-box", DISTANCE, "From the board to the box of relay or contactor.", "3 m"),
          may("box-to-load", DISTANCE, "From that box to the load.", "8 m"),
          may("controller-to-box", DISTANCE, "From the controller to that box.", "22 m"));

  private static final Fields FITTED =
      Fields.of(
          "what is fitted",
          must(
              "ratings",
              RelayFormat.KEY_RATINGS.shape(),
              "What its contact may carry.",
              "{AC-1: 16 A at 250 V}"),
          may("opens-at", Format.DEGREES, "Temperature at which it opens.", "60 °C ± 4 K"),
          may("poles", new Whole(1, 3), "How many; 1 if not written.", "1"));

  private static final Fields RCD =
      Fields.of(
          "a residual-current device",
          may("kind", Choice.of("AC", "A", "F", "B"), "What currents it detects.", "A"),
          may("trip", Format.AMPS, "Rated residual current.", "30 mA"),
          may("rating", Format.AMPS, "Rated current.", "40 A"));

  static final Fields BRIEF =
      Fields.of(
          "a brief",
          must("brief", new Whole(VERSION, VERSION), "Number of this format.", "1"),
          may("title", Format.TEXT, "What the circuit is for.", "Cylinder in the cellar"),
          may(
              "practice",
              Choice.of(Site.Practice.class),
              "Which set of cited tables applies.",
              "iec"),
          may("mains", MAINS, "The mains, as far as they are known.", "{earthing: TN-S}"),
          may(
              "island",
              Format.ISLAND_OR_NONE,
              "What feeds it when the mains fail, or none.",
              "none"),
          may("rcd", RCD, "The residual-current device that is there already.", "{trip: 30 mA}"),
          must("load", LOAD, "The element.", "{power: 9 kW, voltage: 400 V, connection: star}"),
          may("vessel", PartFormat.vessel(), "What it heats.", "{litres: 300, closed: true}"),
          may(
              "thermostat",
              FITTED,
              "The one that is there already.",
              "{ratings: {AC-1: 16 A at 250 V}}"),
          may(
              "cut-out",
              FITTED,
              "The one that is there already.",
              "{ratings: {AC-1: 16 A at 250 V}}"),
          must(
              "controller",
              CONTROLLER,
              "What decides.",
              "{supply: {voltage: 24 V DC, limit: 200 mA}, contact: 0.5 A at 30 V DC-13}"),
          may("distances", DISTANCES, "One way, along the cable.", "{box-to-load: 8 m}"),
          may("air", Format.DEGREES, "Air around the devices, in their box.", "45 °C"),
          may("room", Format.DEGREES, "Air around the wires outside; as air if left out.", "35 °C"),
          may("altitude", Format.LENGTH, "Height above sea level.", "420 m"),
          may("plant", SwitchingFormat.plant(), "What the settings act on.", "{pv-peak: 9 kW}"));

  private BriefFormat() {}

  private static Form none(String noun, String example) {
    return Form.of("none", noun, "write none, or its values: " + example);
  }
}
