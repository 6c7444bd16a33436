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
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.solve.LoadReading;
import org.coilwright.solve.State;
import org.coilwright.table.Cited;

/** A load on the mains: off on every line, on with the right current, stopped by each contact. */
final class LoadRows {
  private final Anatomy anatomy;
  private final Bands bands;
  private final Volts volts;
  private final Part load;

  LoadRows(Anatomy anatomy, Bands bands, Volts volts, Part load) {
    this.anatomy = anatomy;
    this.bands = bands;
    this.volts = volts;
    this.load = load;
  }

  List<Row> off() {
    Reasoned none = bands.off(volts.toEarth(), "V AC");
    List<Row> rows = new ArrayList<>();
    for (String pin : anatomy.livePins(load)) {
      rows.add(
          live(
              Names.of(load.name(), "off", pin),
              "Measure " + pin(pin) + " against earth",
              "between " + pin(pin) + " and PE",
              none.band(),
              "switch off; a line stays on, a pole has welded or line and neutral are crossed.",
              none.grounds()));
    }
    return rows;
  }

  List<Row> on(State on) {
    List<Row> rows = new ArrayList<>();
    LoadReading reading = anatomy.study().load(load.name(), on);
    Cited<Double> drop = bands.figure("checklist.load-drop-share");
    List<String> pins = new ArrayList<>(new TreeMap<>(reading.amps()).keySet());
    for (int i = 0; i < pins.size(); i++) {
      for (int j = i + 1; j < pins.size(); j++) {
        boolean acrossLines = reading.lines().size() > 1 && !pins.get(j).equals("N");
        Quantity expected = acrossLines ? volts.acrossLines() : volts.toNeutral();
        rows.add(
            live(
                Names.of(load.name(), "voltage", pins.get(i), pins.get(j)),
                "Measure the voltage at " + load.name(),
                "between " + pin(pins.get(i)) + " and " + pin(pins.get(j)),
                Volts.band(expected, drop.value()),
                "switch off; look for an open pole, a lost line or a loose clamp.",
                Reasons.of("supply tolerance and the drop to the load", drop)));
      }
    }
    for (String pin : pins) {
      double amps = reading.amps().getOrDefault(pin, 0.0);
      if (!pin.equals("N") && amps > 0) {
        rows.add(current(pin, amps));
      }
    }
    return rows;
  }

  private Row current(String pin, double amps) {
    Quantity supply = volts.acrossLines();
    boolean heater = load instanceof Part.Heater;
    Cited<Double> least = bands.figure("poles.heater-power-low");
    Cited<Double> most = bands.figure("poles.heater-power-high");
    Cited<Double> other = bands.figure("checklist.load-spread");
    double low = heater ? least.value() : 1 - other.value();
    double high = heater ? most.value() : 1 + other.value();
    return live(
        Names.of(load.name(), "current", pin),
        "Measure the current of " + pin(pin),
        "around the wire at " + pin(pin),
        Band.between(
            amps * low * supply.low() / supply.nominal(),
            amps * high * supply.high() / supply.nominal(),
            "A"),
        "switch off; compare with the plate, then with the element's resistance.",
        Reasons.of(
            Printed.of(amps, Dimension.CURRENT)
                + " at nominal voltage, with the tolerance of power and of supply",
            heater ? least : other,
            heater ? most : other));
  }

  private String pin(String pin) {
    return load.name() + "." + pin;
  }

  private static Row live(
      String name,
      String action,
      String where,
      Expected expected,
      String otherwise,
      Grounds grounds) {
    return new Row(name, "", action, where, expected, otherwise, true, grounds);
  }

  List<Row> oneByOne() {
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
          live(
              Names.of(load.name(), "stopped-by", column),
              verb(column, !position),
              "around every wire of " + load.name() + "; write the highest current",
              Band.atMost(share.value() * rated, "A"),
              "switch off: " + load.name() + " is not stopped by " + column + ".",
              Reasons.of(
                  Printed.given(share.value(), Dimension.RATIO) + " of the current when on",
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
