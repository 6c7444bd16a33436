// Over 250 lines: the format is one value, and its parts are read one after the other.
package org.coilwright.netlist;

import static org.coilwright.netlist.Key.may;
import static org.coilwright.netlist.Key.must;

import java.util.Optional;
import org.coilwright.netlist.Shape.ByKind;
import org.coilwright.netlist.Shape.Choice;
import org.coilwright.netlist.Shape.Either;
import org.coilwright.netlist.Shape.Expression;
import org.coilwright.netlist.Shape.Fields;
import org.coilwright.netlist.Shape.Form;
import org.coilwright.netlist.Shape.Listing;
import org.coilwright.netlist.Shape.MainsVoltage;
import org.coilwright.netlist.Shape.Measure;
import org.coilwright.netlist.Shape.Named;
import org.coilwright.netlist.Shape.Phrase;
import org.coilwright.netlist.Shape.Pin;
import org.coilwright.netlist.Shape.Rated;
import org.coilwright.netlist.Shape.Size;
import org.coilwright.netlist.Shape.Text;
import org.coilwright.netlist.Shape.Whole;
import org.coilwright.netlist.Shape.YesNo;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Wanted;

/**
 * The netlist format, version 1, as data. The other classes of the format are reached through this
 * one alone, for they are made of its constants.
 */
final class Format {
  static final int VERSION = 1;

  /** Wires that a file may have: as many as it has room for. */
  static final int MOST = LargestFile.VALUES;

  static final Text TEXT = new Text();
  static final YesNo YES_NO = new YesNo();
  static final Form DESIGNATION =
      Form.of(
          WirePhrase.DESIGNATION,
          "a designation",
          "begin with a letter and go on with letters, digits, - or _: K1");
  static final Form PIN =
      Form.of(
          WirePhrase.PIN, "a pin", "write it as the device is marked, without point or space: A1");
  static final Choice PHASES = Choice.of(Site.Phases.class);
  static final Listing TWO_PINS = new Listing(PIN, 2, 2);
  static final Measure VOLTS = measure(Dimension.VOLTAGE);
  static final Measure AMPS = measure(Dimension.CURRENT);
  static final Measure DEGREES = measure(Dimension.TEMPERATURE);
  static final Measure SHARE = measure(Dimension.RATIO);
  static final Measure WATTS = measure(Dimension.POWER);
  static final Measure OHMS = measure(Dimension.RESISTANCE);
  static final Measure TIME = measure(Dimension.TIME);
  static final Measure LENGTH = measure(Dimension.LENGTH);
  static final Measure ENERGY = measure(Dimension.ENERGY);
  static final Measure LITRES = new Measure(Wanted.of(Dimension.VOLUME).orBare(), false);

  static final ByKind PART = new ByKind(PartFormat.kinds(), true);
  private static final ByKind TYPE = new ByKind(PART.kinds(), false);

  private static final Fields CIRCUIT =
      Fields.of(
          "the title block",
          must("title", TEXT, "What the circuit is for.", "Boiler in the cellar"),
          may("reference", TEXT, "Number of the job or the drawing.", "2026-014"),
          may("revision", TEXT, "Revision of this netlist.", "B"),
          may("prepared-by", TEXT, "Who wrote it.", "N. N."),
          may("date", TEXT, "When it was written.", "2026-01-31"),
          may("note", TEXT, "Anything else.", "replaces revision A"));

  private static final Fields MAINS =
      Fields.of(
          "the mains",
          must("phases", PHASES, "Lines: 1, 3 or split.", "3"),
          must(
              "voltage",
              new MainsVoltage(),
              "Line to neutral for one phase, line to line for three; both for split.",
              "400 V ± 10 %"),
          may("frequency", measure(Dimension.FREQUENCY), "Frequency.", "50 Hz"),
          may(
              "earthing",
              Choice.of("TN-S", "TN-C-S", "TN-C", "TT", "IT"),
              "Earthing system.",
              "TN-S"),
          may("fault-current", AMPS, "Prospective fault current at the supply.", "2.5 kA"),
          may("loop-impedance", OHMS, "Earth fault loop impedance at the supply.", "0.6 Ω"));

  static final Fields ENCLOSURE =
      Fields.of(
          "the enclosure",
          may("width", LENGTH, "Width.", "300 mm"),
          may("height", LENGTH, "Height.", "400 mm"),
          may("depth", LENGTH, "Depth.", "150 mm"),
          may("mounting", Choice.of(Site.BoxMounting.class), "How it stands.", "wall"),
          may("vents", Choice.of(Site.Vents.class), "Openings for air.", "none"));

  private static final Form NO_ISLAND =
      Form.of(
          "none",
          "an island",
          "write none, or its values: {rated-current: 14.5 A, neutral-bond: by-inverter}");

  /** What feeds the circuit when the mains fail. */
  private static final Fields ISLAND =
      Fields.of(
          "island operation",
          may("rated-current", AMPS, "What its source gives in each line, lasting.", "14.5 A"),
          may("fault-current", AMPS, "The most its source gives into a short-circuit.", "22 A"),
          may("lasts", TIME, "How long its source gives that before it shuts down.", "5 s"),
          may(
              "neutral-bond",
              Choice.of("by-inverter", "fixed", "none"),
              "Who joins neutral and earth while the mains are off.",
              "by-inverter"),
          may("electrode", OHMS, "Resistance of the site's own earth electrode.", "100 Ω"),
          may(
              "feeds",
              new Listing(DESIGNATION, 1, 100),
              "Parts at which it feeds in, for what lies behind them; all if not written.",
              "[F1]"));

  static final Either ISLAND_OR_NONE = new Either(NO_ISLAND, ISLAND);

  private static final Fields SITE =
      Fields.of(
          "the site",
          may("mains", MAINS, "The mains that feed the circuit.", "{phases: 1, voltage: 230 V}"),
          may(
              "island",
              ISLAND_OR_NONE,
              "What feeds the circuit when the mains fail, or none.",
              "{rated-current: 14.5 A, fault-current: 22 A, neutral-bond: by-inverter}"),
          may("enclosure-air", DEGREES, "Air around the devices.", "0..45 °C"),
          may("ambient", DEGREES, "Air around the enclosure.", "0..35 °C"),
          may("enclosure", ENCLOSURE, "The box the devices sit in.", "{width: 300 mm}"),
          may(
              "altitude",
              new Measure(
                  new Wanted(java.util.List.of(Dimension.LENGTH), false, Wanted.Least.ANY), false),
              "Height above sea level.",
              "420 m"),
          must(
              "practice",
              Choice.of(Site.Practice.class),
              "Which set of cited tables applies.",
              "iec"));

  private static final Choice INSULATION = new Choice(Run.INSULATION_MATERIALS);
  private static final String INSULATION_WORDS =
      "Insulation and how warm it lets the core get; else pvc-70, gauges pvc-75.";
  private static final String CLAMP_WORDS =
      "Temperature that the clamps at both ends are listed for.";

  private static final Fields RUN =
      Fields.of(
          "a run",
          may("length", LENGTH, "Length, one way.", "12 m"),
          may("size", new Size(), "Cross-section of each core.", "0.75 mm²"),
          may("insulation", VOLTS, "Rated voltage of the insulation.", "300 V"),
          may(
              "installed",
              Choice.of(Method.class),
              "Reference method of installation, or panel.",
              "B2"),
          may(
              "shares-with",
              new Listing(DESIGNATION, 1, 100),
              "Other runs in the same conduit or duct.",
              "[W2]"),
          may("core-material", Choice.of("copper", "aluminium"), "Metal of the cores.", "copper"),
          may("insulation-material", INSULATION, INSULATION_WORDS, "xlpe-90"),
          may("clamp-temperature", DEGREES, CLAMP_WORDS, "75 °C"),
          may("flexible", YES_NO, "True for fine strands.", "true"));

  private static final Fields WIRE =
      Fields.of(
          "a wire",
          must("from", new Pin(), "Where it begins.", "F1.2"),
          must("to", new Pin(), "Where it ends.", "Q1.1"),
          may("run", DESIGNATION, "The run it lies in.", "W3"),
          may("size", new Size(), "Cross-section.", "6 mm²"),
          may("length", LENGTH, "Length, one way.", "1.5 m"),
          may("insulation", VOLTS, "Rated voltage of the insulation.", "300 V"),
          may("insulation-material", INSULATION, INSULATION_WORDS, "xlpe-90"),
          may("clamp-temperature", DEGREES, CLAMP_WORDS, "75 °C"),
          may("colour", TEXT, "Colour of the core.", "brown"),
          may("number", TEXT, "Number on the wire's marker.", "101"));

  private static final Fields ACCEPTED =
      Fields.of(
          "an accepted finding",
          must("rule", TEXT, "Name of the rule.", "drive.below-least-load"),
          must(
              "at",
              TEXT,
              "Where, as the finding names it: part, pin, run, wire 3, or a wire's number.",
              "K1"),
          must("because", TEXT, "Why it is accepted.", "contact is sealed and gold-plated"),
          must("by", TEXT, "Who accepts it.", "N. N."));

  private static final Named TYPES =
      new Named(
          "a type",
          Form.of(
              "[A-Za-z0-9][A-Za-z0-9._-]{0,39}",
              "a type's name",
              "use letters, digits, point, - or _"),
          TYPE,
          0);

  private static final Listing INCLUDE = new Listing(TEXT, 0, 50);

  static final Fields NETLIST =
      Fields.of(
          "a netlist",
          must("coilwright", new Whole(VERSION, VERSION), "Number of this format.", "1"),
          must("circuit", CIRCUIT, "Title block.", "{title: Boiler in the cellar}"),
          must("site", SITE, "Where the circuit stands.", "{practice: iec}"),
          may(
              "include",
              INCLUDE,
              "Files that hold types, in this folder or below.",
              "[types.yaml]"),
          may("types", TYPES, "Parts to be used several times.", "{small: {is: diode}}"),
          must("parts", new Named("a part", DESIGNATION, PART, 1), "Devices.", "{X0: {is: mains}}"),
          may(
              "runs",
              new Named("a run", DESIGNATION, RUN, 0),
              "Cables, cords and conduits that hold several wires.",
              "{W1: {length: 12 m, size: 0.75 mm²}}"),
          must(
              "wires",
              new Listing(new Either(new Phrase(), WIRE), 0, MOST),
              "Connections between two pins.",
              "[U1.2 to K1.A1 in W1]"),
          may(
              "intent",
              new Named("a load", DESIGNATION, new Expression(), 0),
              "When each load shall be on; a relay that holds itself in may be named.",
              "{E1: U1.heat and S1}"),
          may("switching", SwitchingFormat.switching(), "Settings of the controller.", "{}"),
          may(
              "accepted",
              new Listing(ACCEPTED, 0, 1000),
              "Findings that the designer has knowingly accepted.",
              "[]"));

  /** A file named under {@code include}. */
  static final Fields INCLUDED =
      Fields.of(
          "an included file",
          may("coilwright", new Whole(VERSION, VERSION), "Number of this format.", "1"),
          may("include", INCLUDE, "Further files that hold types.", "[more.yaml]"),
          may("types", TYPES, "Parts to be used several times.", "{small: {is: diode}}"));

  private Format() {}

  static Measure measure(Dimension... dimensions) {
    return new Measure(Wanted.of(dimensions), false);
  }

  static Rated rated(Dimension amount, Dimension at) {
    return new Rated(Wanted.of(amount), Optional.of(Wanted.of(at)), false);
  }
}
