// Over 250 lines: loops and residual-current devices share their figures.
package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.coilwright.checklist.Expected.Band;
import org.coilwright.checklist.Expected.Seen;
import org.coilwright.checklist.Expected.State;
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
  private static final double KILO = 1000;

  private final Anatomy anatomy;
  private final Bands bands;
  private final Texts texts;

  ProtectionRows(Anatomy anatomy, Bands bands, Texts texts) {
    this.anatomy = anatomy;
    this.bands = bands;
    this.texts = texts;
  }

  /** Where loops are judged by the breaker before a load. */
  private boolean byBreakers(Site.MainsSupply mains) {
    return mains
            .earthing()
            .filter(e -> e.value().toUpperCase(Locale.ROOT).startsWith("TN"))
            .isPresent()
        && !anatomy.isNec();
  }

  /** What the incoming terminals must show for all that rests on these figures. */
  List<Row> incoming(Site.MainsSupply mains, Part.Mains at) {
    List<Row> rows = new ArrayList<>();
    boolean sums =
        byBreakers(mains) && anatomy.loads().stream().anyMatch(l -> loop(l, 1).isPresent());
    OptionalDouble most =
        mains.loopImpedance().isPresent()
            ? OptionalDouble.of(mains.loopImpedance().get().value().high())
            : anatomy.loads().stream()
                .flatMap(load -> loop(load, Volts.toEarth(mains)).stream())
                .mapToDouble(row -> row.expected() instanceof Band b ? b.max().orElse(0) : 0)
                .min();
    String line = at.pins().get(0);
    if (!anatomy.isNec() && most.isPresent() && (sums || mains.loopImpedance().isPresent())) {
      rows.add(
          Row.of(
                  texts,
                  "incoming-loop",
                  Names.of(at.name(), "loop-impedance"),
                  Band.atMost(most.getAsDouble(), "Ω"),
                  Reasons.ofNetlist(texts.of("how.as-written")),
                  at.name(),
                  line)
              .live(true));
    }
    mains
        .faultCurrent()
        .ifPresent(
            current ->
                rows.add(
                    Row.of(
                            texts,
                            "incoming-fault",
                            Names.of(at.name(), "fault-current"),
                            Band.atMost(current.value().high() / KILO, "kA"),
                            Reasons.ofNetlist(texts.of("how.as-written")),
                            at.name())
                        .live(true)));
    return rows;
  }

  /** The loop of each load, added up from what was read: no load is live for it. */
  List<Row> sums(Site.MainsSupply mains) {
    List<Row> rows = new ArrayList<>();
    for (Part load : anatomy.loads()) {
      if (byBreakers(mains)) {
        loop(load, Volts.toEarth(mains)).ifPresent(rows::add);
      }
    }
    return rows;
  }

  /**
   * Residual-current devices that open only a load, or the others.
   *
   * @param ofLoads which of the two
   */
  List<Row> devices(Site.MainsSupply mains, boolean ofLoads) {
    List<Row> rows = new ArrayList<>();
    String earthing = mains.earthing().map(e -> e.value().toUpperCase(Locale.ROOT)).orElse("");
    // where it is not written, the site may have an electrode of its own
    boolean tt = earthing.equals("TT") || earthing.isEmpty();
    Set<String> loadOnly = anatomy.loadOnlyProtection();
    for (Part.Protective device : anatomy.parts(Part.Protective.class)) {
      if (device.isRcd() && loadOnly.contains(device.name()) == ofLoads) {
        rows.add(
            LiveTopics.switched(
                texts, "rcd-on", Names.of(device.name(), "switched-on"), State.ON, device.name()));
        if (tt && !anatomy.isNec()) {
          earthLoop(device).ifPresent(rows::add);
        }
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
        Row.of(
            texts,
            "loop-impedance",
            Names.of(load.name(), "loop-impedance"),
            Band.atMost(ohms, "Ω"),
            Reasons.of(
                texts.of("how.loop-impedance", breaker, current(amps)),
                multiple.get(),
                lowest,
                cold),
            load.name(),
            pin,
            breaker));
  }

  /**
   * With an electrode of the site's own: its loop holds a fault at a voltage that may be touched.
   */
  private Optional<Row> earthLoop(Part.Protective device) {
    return device
        .trip()
        .filter(trip -> !device.poles().isEmpty())
        .map(
            trip -> {
              Cited<Double> touch = bands.figure("sizing.touch-voltage");
              double amps = trip.value().high();
              return Row.of(
                      texts,
                      "earth-loop",
                      Names.of(device.name(), "earth-loop-impedance"),
                      Band.atMost(touch.value() / amps, "Ω"),
                      Reasons.of(
                          texts.of(
                              "how.earth-loop",
                              texts.figure(Printed.given(touch.value(), Dimension.VOLTAGE)),
                              current(amps)),
                          touch),
                      device.name(),
                      device.name() + "." + device.poles().get(0).to())
                  .live(true);
            });
  }

  private List<Row> residual(Part.Protective device) {
    List<Row> rows = new ArrayList<>();
    if (device.trip().isPresent() && !anatomy.isNec()) {
      double amps = device.trip().get().value().nominal();
      Cited<Double> rated = bands.figure("checklist.rcd-time-rated");
      rows.add(
          row(
              device,
              "trip-rated",
              current(amps),
              Band.atMost(rated.value() * MILLI, "ms"),
              Reasons.of(texts.of("how.rcd-rated"), rated)));
      Cited<Double> five = bands.figure("checklist.rcd-time-five");
      Cited<Double> multiple = bands.figure("checklist.rcd-multiple-high");
      rows.add(
          row(
              device,
              "trip-five",
              current(multiple.value() * amps),
              Band.atMost(five.value() * MILLI, "ms"),
              Reasons.of(texts.of("how.rcd-five"), five)));
      Cited<Double> half = bands.figure("checklist.rcd-share-no-trip");
      rows.add(
          row(
              device,
              "trip-half",
              current(half.value() * amps),
              new Seen(State.DOES_NOT_TRIP),
              Reasons.of(texts.of("how.rcd-half"), half)));
    }
    Row button =
        Row.of(
                texts,
                "test-button",
                Names.of(device.name(), "test-button"),
                new Seen(State.TRIPS),
                Reasons.ofNetlist(texts.of("how.rcd-button")),
                device.name())
            .live(true);
    rows.add(rows.isEmpty() ? button : button.inLine(line(device), texts.of("label.button")));
    return rows;
  }

  private static String line(Part.Protective device) {
    return device.name() + ".trip";
  }

  private Row row(
      Part.Protective device, String kind, String amps, Expected expected, Grounds grounds) {
    String pin =
        device.poles().isEmpty() ? device.name() : device.name() + "." + device.poles().get(0).to();
    String name = Names.of(device.name(), kind);
    String label = expected instanceof Seen seen ? amps + ": " + seen.text(texts) : amps;
    return Row.of(texts, kind, name, expected, grounds, device.name(), amps, pin)
        .live(true)
        .inLine(line(device), label);
  }

  private String current(double amps) {
    return texts.figure(Printed.given(amps, Dimension.CURRENT));
  }
}
