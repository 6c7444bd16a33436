package org.coilwright.sizing;

import java.util.Map;
import java.util.Optional;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.table.Cited;

/** Whether an earth fault at the load opens the chosen breaker in time. */
final class EarthFault extends Working {
  /** The type that household breakers have and that opens at the lowest current. */
  private static final String CURVE = "B";

  private final Question q;

  EarthFault(Working begun, Question q) {
    super(begun);
    this.q = q;
  }

  void judge(ConductorSize size, double device) {
    if (q.supply().isNec()) {
      say(
          "not checked: practice nec sets no disconnection time; whether the path of a ground fault"
              + " opens the device (250.4(A)(5)) is judged on site");
      return;
    }
    if (q.supply().earthAlone()) {
      say("in a TT system a residual-current device has to clear it, whatever the loop");
      return;
    }
    Cited<Double> warm = q.wire().core().celsius(size, tables);
    Optional<Cited<Double>> line = WireOhms.perMetre(size, warm.value(), tables);
    Optional<Cited<Double>> back = protective(size, warm.value());
    if (q.wire().metres().isEmpty() || line.isEmpty() || back.isEmpty()) {
      say(
          "not checked: "
              + (q.wire().metres().isEmpty() ? "give --length" : "no table has the wire"));
      return;
    }
    loop(device, warm.value(), line.get(), back.get());
  }

  /** Resistance of the protective conductor that goes with a line conductor. */
  private Optional<Cited<Double>> protective(ConductorSize size, double celsius) {
    return tables
        .lookup("protective-conductor-size", Map.of(), size.mm2(), "protective")
        .flatMap(
            mm2 -> {
              cited.add(mm2);
              return WireOhms.perMetre(ConductorSize.ofMm2(mm2.value()), celsius, tables);
            });
  }

  private void loop(double device, double celsius, Cited<Double> line, Cited<Double> back) {
    Cited<Double> outside = tables.figure("sizing.assumed-loop");
    double mains = q.supply().loopOhms().orElse(outside.value());
    double wires = (line.value() + back.value()) * q.wire().metres().getAsDouble();
    double toEarth = q.load().wires() == 3 ? q.load().volts() / Math.sqrt(3) : q.load().volts();
    Cited<Double> low = tables.figure("sizing.lowest-voltage");
    Cited<Double> trips =
        tables.lookup("magnetic-trip", Map.of("curve", CURVE), "trips").orElseThrow();
    double limit = low.value() * toEarth / (trips.value() * device);
    double total = mains + wires;
    if (q.supply().loopOhms().isEmpty()) {
      cited.add(outside);
    }
    cited.add(line);
    cited.add(low);
    cited.add(trips);
    boolean opens = !Comparison.exceeds(total, limit);
    add(
        "earth-fault",
        "earth fault",
        "%s of the mains%s + %s of line and protective conductor at %s = %s; a %s breaker of type %s opens%s in a TN system up to %s (%s × %s ÷ (%s × %s))%s"
            .formatted(
                ohms(mains),
                q.supply().loopOhms().isPresent() ? "" : " assumed, give --loop-impedance",
                ohms(wires),
                Printed.of(celsius, Dimension.TEMPERATURE),
                ohms(total),
                amps(device),
                CURVE,
                within(toEarth),
                ohms(limit),
                plain(low.value()),
                Printed.volts(toEarth),
                plain(trips.value()),
                amps(device),
                opens
                    ? ""
                    : "; too much: a residual-current device has to clear it, or thicker wire"),
        total,
        "Ω");
  }

  /** {@code in 0.4 s}; a network named in round figures counts with its name. */
  private String within(double toEarth) {
    double named = toEarth / tables.figure("drive.round-name").value();
    return tables
        .lookup("disconnection-times", Map.of("earthing", "TN"), named, "ac")
        .map(
            time -> {
              cited.add(time);
              return " in " + Printed.of(time.value(), Dimension.TIME);
            })
        .orElse("");
  }

  private void say(String words) {
    add("earth-fault", "earth fault", words);
  }

  private static String ohms(double ohms) {
    return Printed.of(ohms, Dimension.RESISTANCE);
  }
}
