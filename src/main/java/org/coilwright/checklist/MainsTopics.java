package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeMap;
import org.coilwright.checklist.Bands.Reasoned;
import org.coilwright.checklist.Expected.Band;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Figures;
import org.coilwright.quantity.Quantity;
import org.coilwright.solve.LoadReading;
import org.coilwright.solve.State;
import org.coilwright.table.Cited;

/** What is done with the mains on. */
final class MainsTopics {
  private static final String ALL_OFF = "Every breaker, fuse and residual-current device off.";

  private final Anatomy anatomy;
  private final Bands bands;

  MainsTopics(Anatomy anatomy, Bands bands) {
    this.anatomy = anatomy;
    this.bands = bands;
  }

  /**
   * Where the control supply itself needs the mains, the mains is measured before it is let in:
   * nothing may be switched on at a voltage nobody has read.
   */
  List<Topic> beforeTheControlSupply() {
    return anatomy.mains().isEmpty() || anatomy.inputs().isEmpty()
        ? List.of()
        : List.of(
            new Topic(
                Section.Stage.ELV,
                "the mains that the control supply needs",
                ALL_OFF,
                incoming(anatomy.mains().get())));
  }

  List<Topic> topics() {
    Optional<Site.MainsSupply> mains = anatomy.mains();
    if (mains.isEmpty()) {
      return List.of();
    }
    List<Topic> topics = new ArrayList<>();
    if (anatomy.inputs().isEmpty()) {
      topics.add(topic("incoming supply", ALL_OFF, incoming(mains.get())));
    }
    topics.add(
        topic("protection", "Loads off.", new ProtectionRows(anatomy, bands).rows(mains.get())));
    for (Part.Relay relay : anatomy.parts(Part.Relay.class)) {
      if (anatomy.mainsCoil(relay)) {
        List<Row> rows = new ControlTopics(anatomy).coil(relay, true);
        topics.add(topic("coil of " + relay.name(), loadsOff(), rows));
      }
    }
    for (Part load : anatomy.loads()) {
      anatomy
          .stateWithOff(load.name())
          .ifPresent(
              s -> topics.add(topic(load.name() + " off", standing(s), off(load, mains.get()))));
      anatomy
          .stateWithOn(load.name())
          .ifPresent(
              s -> topics.add(topic(load.name() + " on", standing(s), on(load, s, mains.get()))));
      topics.add(
          topic(
              load.name() + ", one contact after another",
              "All as for " + load.name() + " on; put each contact back before the next row.",
              oneByOne(load)));
    }
    return topics;
  }

  private static Topic topic(String title, String beginWith, List<Row> rows) {
    return new Topic(Section.Stage.MAINS, title, beginWith, rows);
  }

  private String loadsOff() {
    var only = anatomy.loadOnlyProtection();
    return only.isEmpty() ? "Loads disconnected." : String.join(", ", only) + " still locked off.";
  }

  private List<Row> incoming(Site.MainsSupply mains) {
    List<Row> rows = new ArrayList<>();
    Quantity volts = mains.voltage().value();
    for (Part.Mains part : anatomy.parts(Part.Mains.class)) {
      List<String> lines = part.pins().stream().filter(p -> p.startsWith("L")).toList();
      double toNeutral = DeadTopics.toEarth(mains) / volts.nominal();
      for (String line : lines) {
        rows.add(voltage(part.name(), line, "N", volts.times(toNeutral)));
      }
      for (int i = 0; i < lines.size(); i++) {
        for (int j = i + 1; j < lines.size(); j++) {
          rows.add(voltage(part.name(), lines.get(i), lines.get(j), volts));
        }
      }
      Reasoned off = bands.off(DeadTopics.toEarth(mains), "V AC");
      rows.add(
          Row.dead(
                  "Measure the neutral of " + part.name() + " against earth",
                  "between " + part.name() + ".N and " + part.name() + ".PE",
                  off.band(),
                  "switch off; line and neutral may be crossed, or the neutral is open.",
                  off.grounds())
              .live(true));
    }
    return rows;
  }

  private Row voltage(String part, String from, String to, Quantity volts) {
    return Row.dead(
            "Measure the supply at " + part,
            "between " + part + "." + from + " and " + part + "." + to,
            volts(volts, 0),
            "switch off; wrong line, lost neutral or a supply outside its range.",
            withTolerance(volts))
        .live(true);
  }

  /** The supply's own tolerance, or the standard one if only a nominal voltage is written. */
  private Band volts(Quantity volts, double drop) {
    Quantity wide = spread(volts);
    return Band.between(wide.low() * (1 - drop), wide.high(), "V AC");
  }

  private Quantity spread(Quantity volts) {
    if (!volts.isExact()) {
      return volts;
    }
    return new Quantity(
        volts.dimension(),
        volts.nominal() * bands.figure("supply.mains-low").value(),
        volts.nominal(),
        volts.nominal() * bands.figure("supply.mains-high").value(),
        volts.kind());
  }

  private Grounds withTolerance(Quantity volts) {
    return volts.isExact()
        ? Reasons.of("standard tolerance, none is stated", bands.figure("supply.mains-low"))
        : Reasons.ofNetlist("site.mains: " + Figures.of(volts));
  }

  private String standing(State state) {
    return "Every protective device on. " + anatomy.inWords(state) + ".";
  }

  private List<Row> off(Part load, Site.MainsSupply mains) {
    Reasoned none = bands.off(DeadTopics.toEarth(mains), "V AC");
    List<Row> rows = new ArrayList<>();
    for (String pin : anatomy.livePins(load)) {
      rows.add(
          Row.dead(
                  "Measure " + load.name() + "." + pin + " against earth",
                  "between " + load.name() + "." + pin + " and PE",
                  none.band(),
                  "switch off; a line stays on, a pole has welded or line and neutral are crossed.",
                  none.grounds())
              .live(true));
    }
    return rows;
  }

  private List<Row> on(Part load, State on, Site.MainsSupply mains) {
    List<Row> rows = new ArrayList<>();
    LoadReading reading = anatomy.study().load(load.name(), on);
    Cited<Double> drop = bands.figure("checklist.load-drop-share");
    Quantity volts = mains.voltage().value();
    Quantity across =
        reading.lines().size() >= 2
            ? volts
            : volts.times(DeadTopics.toEarth(mains) / volts.nominal());
    List<String> pins = new ArrayList<>(new TreeMap<>(reading.amps()).keySet());
    for (int i = 0; i < pins.size(); i++) {
      for (int j = i + 1; j < pins.size(); j++) {
        boolean neutral = pins.get(j).equals("N");
        Quantity expected =
            neutral ? volts.times(DeadTopics.toEarth(mains) / volts.nominal()) : across;
        rows.add(
            new Row(
                "",
                "Measure the voltage at " + load.name(),
                "between "
                    + load.name()
                    + "."
                    + pins.get(i)
                    + " and "
                    + load.name()
                    + "."
                    + pins.get(j),
                volts(expected, drop.value()),
                "switch off; look for an open pole, a lost line or a loose clamp.",
                true,
                Reasons.of("supply tolerance and the drop to the load", drop)));
      }
    }
    for (String pin : pins) {
      double amps = reading.amps().getOrDefault(pin, 0.0);
      if (!pin.equals("N") && amps > 0) {
        rows.add(current(load, pin, amps, volts));
      }
    }
    return rows;
  }

  private Row current(Part load, String pin, double amps, Quantity volts) {
    Quantity wide = spread(volts);
    boolean heater = load instanceof Part.Heater;
    Cited<Double> least = bands.figure("poles.heater-power-low");
    Cited<Double> most = bands.figure("poles.heater-power-high");
    Cited<Double> other = bands.figure("checklist.load-spread");
    double low = heater ? least.value() : 1 - other.value();
    double high = heater ? most.value() : 1 + other.value();
    return new Row(
        "",
        "Measure the current of " + load.name() + "." + pin,
        "around the wire at " + load.name() + "." + pin,
        Band.between(
            amps * low * wide.low() / volts.nominal(),
            amps * high * wide.high() / volts.nominal(),
            "A"),
        "switch off; compare with the plate, then with the element's resistance.",
        true,
        Reasons.of(
            Figures.computed(amps, Dimension.CURRENT)
                + " at nominal voltage, with the tolerance of power and of supply",
            heater ? least : other,
            heater ? most : other));
  }

  private List<Row> oneByOne(Part load) {
    Optional<State> on = anatomy.stateWithOn(load.name());
    if (on.isEmpty()) {
      return List.of();
    }
    double rated = largest(anatomy.study().load(load.name(), on.get()));
    Cited<Double> share = bands.figure("poles.on-share");
    List<Row> rows = new ArrayList<>();
    for (String column : anatomy.study().columns()) {
      boolean position = on.get().positions().getOrDefault(column, false);
      Optional<State> state = anatomy.stateBeside(on.get(), column);
      if (state.isEmpty() || anatomy.study().load(load.name(), state.get()).on()) {
        continue;
      }
      rows.add(
          new Row(
              "",
              verb(column, !position),
              "around every wire of " + load.name() + "; write the highest current",
              Band.atMost(share.value() * rated, "A"),
              "switch off: " + load.name() + " is not stopped by " + column + ".",
              true,
              Reasons.of(
                  Figures.given(share.value(), Dimension.RATIO) + " of the current when on",
                  share)));
    }
    return rows;
  }

  private static double largest(LoadReading reading) {
    return reading.amps().values().stream().max(Comparator.naturalOrder()).orElse(0.0);
  }

  /** What a hand does to bring a contact into the other position. */
  private String verb(String column, boolean operated) {
    Part part = anatomy.netlist().parts().get(column);
    if (part instanceof Part.Thermal thermal && !operated) {
      return thermal.isCutOut()
          ? "Trip " + column + " by its test means"
          : "Turn " + column + " down until it opens";
    }
    String word = anatomy.position(column, operated);
    return "Turn " + column + " to " + word.toLowerCase(Locale.ROOT);
  }
}
