package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.coilwright.checklist.Expected.Band;
import org.coilwright.checklist.Expected.Seen;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.table.Cited;

/** Earth-fault loop and residual-current devices. The limits are those of the IEC practice. */
final class ProtectionRows {
  private static final Map<String, String> MULTIPLE =
      Map.of(
          "B", "checklist.breaker-b-multiple",
          "C", "checklist.breaker-c-multiple",
          "D", "checklist.breaker-d-multiple");
  private static final double MILLI = 1000;

  /** How the action of a loop row begins. */
  static final String LOOP = "Measure the loop impedance at ";

  private final Anatomy anatomy;
  private final Bands bands;

  ProtectionRows(Anatomy anatomy, Bands bands) {
    this.anatomy = anatomy;
    this.bands = bands;
  }

  List<Row> rows(Site.MainsSupply mains) {
    List<Row> rows = new ArrayList<>();
    boolean tn =
        mains.earthing().map(e -> e.value().toUpperCase(Locale.ROOT)).orElse("").startsWith("TN");
    for (Part load : anatomy.loads()) {
      if (tn && !anatomy.isNec()) {
        loop(load, Volts.toEarth(mains)).ifPresent(rows::add);
      }
    }
    for (Part.Protective device : anatomy.parts(Part.Protective.class)) {
      if (device.isRcd()) {
        rows.addAll(residual(device));
      }
    }
    return rows;
  }

  /** Measured loop impedance that still lets the breaker before a load open at once. */
  private Optional<Row> loop(Part load, double volts) {
    var names = anatomy.protectionOf(anatomy.nodesOf(load));
    // Of several in series the one that opens at the least current will do.
    double amps = 0;
    String breaker = "";
    Optional<Cited<Double>> multiple = Optional.empty();
    for (Part.Protective device : anatomy.parts(Part.Protective.class)) {
      if (!names.contains(device.name()) || device.curve().isEmpty() || device.rating().isEmpty()) {
        continue;
      }
      String name = MULTIPLE.get(device.curve().get().value());
      if (name != null) {
        Cited<Double> figure = bands.figure(name);
        double needed = figure.value() * device.rating().get().value().nominal();
        if (amps == 0 || needed < amps) {
          amps = needed;
          breaker = device.name();
          multiple = Optional.of(figure);
        }
      }
    }
    if (multiple.isEmpty() || !anatomy.wired(load.name(), "PE")) {
      return Optional.empty();
    }
    Cited<Double> lowest = bands.figure("checklist.loop-voltage-factor");
    Cited<Double> cold = bands.figure("checklist.loop-cold-factor");
    double ohms = cold.value() * lowest.value() * volts / amps;
    String pin = anatomy.livePins(load).get(0);
    return Optional.of(
        Row.dead(
                Names.of(load.name(), "loop-impedance"),
                LOOP + load.name(),
                "between " + load.name() + "." + pin + " and " + load.name() + ".PE",
                Band.atMost(ohms, "Ω"),
                breaker + " would open too late: thicker or shorter wire, or another device.",
                Reasons.of(
                    breaker
                        + " opens at once from "
                        + Printed.of(amps, Dimension.CURRENT)
                        + "; lowest supply and cold wires allowed for",
                    multiple.get(),
                    lowest,
                    cold))
            .when("Controlled contacts closed, load wires lifted.")
            .live(true));
  }

  private List<Row> residual(Part.Protective device) {
    List<Row> rows = new ArrayList<>();
    if (device.trip().isPresent() && !anatomy.isNec()) {
      double amps = device.trip().get().value().nominal();
      Cited<Double> half = bands.figure("checklist.rcd-share-no-trip");
      rows.add(
          row(
              device,
              "trip-half",
              "Test " + device.name() + " at " + current(half.value() * amps),
              new Seen(Expected.State.DOES_NOT_TRIP),
              Reasons.of("half the rated residual current", half)));
      Cited<Double> rated = bands.figure("checklist.rcd-time-rated");
      rows.add(
          row(
              device,
              "trip-rated",
              "Test " + device.name() + " at " + current(amps),
              Band.atMost(rated.value() * MILLI, "ms"),
              Reasons.of("operating time, general type", rated)));
      Cited<Double> five = bands.figure("checklist.rcd-time-five");
      Cited<Double> multiple = bands.figure("checklist.rcd-multiple-high");
      rows.add(
          row(
              device,
              "trip-five",
              "Test " + device.name() + " at " + current(multiple.value() * amps),
              Band.atMost(five.value() * MILLI, "ms"),
              Reasons.of("operating time at five times the rated current", five)));
    }
    rows.add(
        Row.dead(
                Names.of(device.name(), "test-button"),
                "Press the test button of " + device.name(),
                "",
                new Seen(Expected.State.TRIPS),
                "replace " + device.name() + ".",
                Reasons.ofNetlist("every residual-current device has one"))
            .live(true));
    return rows;
  }

  private static Row row(
      Part.Protective device, String test, String action, Expected expected, Grounds grounds) {
    String pin =
        device.poles().isEmpty() ? device.name() : device.name() + "." + device.poles().get(0).to();
    return Row.dead(
            Names.of(device.name(), test),
            action,
            "between " + pin + " and PE",
            expected,
            "look for leakage behind it; if there is none, replace " + device.name() + ".",
            grounds)
        .live(true);
  }

  private static String current(double amps) {
    return Printed.given(amps, Dimension.CURRENT);
  }
}
