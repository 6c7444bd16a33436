package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
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
  private final Texts texts;
  private final StateWords words;

  LoadRows(Anatomy anatomy, Bands bands, Volts volts, Part load, Texts texts) {
    this.anatomy = anatomy;
    this.texts = texts;
    this.words = new StateWords(anatomy, texts);
    this.bands = bands;
    this.volts = volts;
    this.load = load;
  }

  List<Row> off() {
    Reasoned none = bands.off(volts.toEarth(), "V AC");
    List<Row> rows = new ArrayList<>();
    for (String pin : anatomy.livePins(load)) {
      rows.add(
          live("load-off", "off-" + pin, none.band(), none.grounds(), pin)
              .inLine(load.name() + ".off", pin));
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
                    "load-voltage",
                    "voltage-" + pins.get(i) + "-" + pins.get(j),
                    Volts.band(expected, drop.value()),
                    Reasons.of(texts.of("how.load-voltage"), drop),
                    pins.get(i),
                    pins.get(j))
                .inLine(
                    load.name() + (acrossLines ? ".lines" : ".to-neutral"),
                    pins.get(i) + "–" + pins.get(j)));
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
            "load-current",
            "current-" + pin,
            Band.between(
                amps * low * supply.low() / supply.nominal(),
                amps * high * supply.high() / supply.nominal(),
                "A"),
            Reasons.of(
                texts.of("how.load-current", texts.figure(Printed.of(amps, Dimension.CURRENT))),
                heater ? least : other,
                heater ? most : other),
            pin)
        .inLine(load.name() + ".current", pin);
  }

  private Row live(
      String kind, String test, Expected expected, Grounds grounds, Object... pinsAndMore) {
    List<Object> arguments = new ArrayList<>(List.of(load.name()));
    arguments.addAll(List.of(pinsAndMore));
    return Row.of(texts, kind, Names.of(load.name(), test), expected, grounds, arguments.toArray())
        .live(true);
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
                  kind(column, !position),
                  "stopped-by-" + column,
                  Band.atMost(share.value() * rated, "A"),
                  Reasons.of(
                      texts.of(
                          "how.share-of-current",
                          texts.figure(Printed.given(share.value(), Dimension.RATIO))),
                      share),
                  column,
                  words.position(column, !position))
              .inLine(load.name() + ".stopped", column + " " + words.position(column, !position))
              .when(""));
    }
    return rows;
  }

  private static double largest(LoadReading reading) {
    return reading.amps().values().stream().max(Comparator.naturalOrder()).orElse(0.0);
  }

  /** What a hand does to bring a contact into the other position. */
  private String kind(String column, boolean operated) {
    Part part = anatomy.netlist().parts().get(column);
    if (part instanceof Part.Thermal thermal && !operated) {
      return thermal.isCutOut() ? "stop-by-cut-out" : "stop-by-thermostat";
    }
    return "stop-by-contact";
  }
}
