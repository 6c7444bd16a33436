package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Run;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Change;
import org.coilwright.rules.LineLoss.Stretch;
import org.coilwright.table.Cited;
import org.coilwright.table.ConductorTable;
import org.coilwright.table.Tables;

/**
 * What would bring a coil the volts it lacks: thicker wire, a shorter line, a stiffer supply. The
 * coil is taken to stay what it is, so its volts follow from the ratio of the line's resistance to
 * its own; with other currents in the same wires that is an estimate.
 *
 * @param loss the line as it is
 * @param source volts at the supply's terminals in the worst case
 * @param coil volts at the coil then
 * @param needed volts it must get
 */
record LineCure(Tables tables, LineLoss loss, double source, double coil, double needed) {

  /** A thicker wire and what it leaves at the coil. */
  record Thicker(ConductorSize size, double volts) {}

  /** True if a line without any resistance would do. */
  boolean lineCanHelp() {
    return source > needed && coil > 0 && source > coil && across(loss.inSeries()) > needed;
  }

  /** Volts at the coil with so many ohms on the way in place of those that are there. */
  private double across(double ohms) {
    return source / (1 + (source - coil) / coil * ohms / loss.all());
  }

  /** Ω on the way with which the coil would get just what it needs. */
  private double allowed() {
    return loss.all() * ((source - needed) / needed) / ((source - coil) / coil);
  }

  /** What the resistors on the way lose, V. */
  double lostInResistor() {
    return (source - coil) * loss.inSeries() / loss.all();
  }

  /** The most that the one resistor on the way may have; empty if none does. */
  Optional<String> smaller() {
    double left = allowed() - loss.ohms();
    boolean one =
        loss.resistor()
            .flatMap(Part.Resistor::resistance)
            .filter(r -> r.value().high() == loss.inSeries())
            .isPresent();
    return one && coil > 0 && source > needed && left > 0
        ? Optional.of(Printed.atMost(left, Dimension.RESISTANCE))
        : Optional.empty();
  }

  /** What a stretch loses, V. */
  double lost(Stretch stretch) {
    return loss.share(stretch, source - coil);
  }

  /** {@code W1 (140 m of 0.5 mm², there and back) loses 2.12 V of 11.4 V. }. */
  String lossInWords(Stretch stretch) {
    String metres =
        stretch.metres().isPresent()
            ? Printed.of(stretch.metres().getAsDouble(), Dimension.LENGTH)
            : "";
    String size = stretch.size().map(Printed::of).orElse("");
    String wire =
        Stream.of(metres, size).filter(w -> !w.isEmpty()).collect(Collectors.joining(" of "));
    String cores =
        stretch.cores() < 2
            ? ""
            : stretch.cores() == 2
                ? "there and back"
                : "counted %s times".formatted(stretch.cores());
    String inside =
        Stream.of(wire, cores).filter(w -> !w.isEmpty()).collect(Collectors.joining(", "));
    return "%s%s loses %s of the %s that the supply gives. "
        .formatted(
            stretch.name().startsWith("the ") ? "T" + stretch.name().substring(1) : stretch.name(),
            inside.isEmpty() ? "" : " (" + inside + ")",
            Printed.volts(lost(stretch)),
            Printed.volts(source));
  }

  /** {@code R1 (300 Ω) loses 39 V of the 207 V that the supply gives. }. */
  String resistorInWords(Part.Resistor resistor) {
    return "%s%s loses %s of the %s that the supply gives. "
        .formatted(
            resistor.name(),
            resistor.resistance().map(r -> " (" + r.text() + ")").orElse(""),
            Printed.volts(lostInResistor()),
            Printed.volts(source));
  }

  /** The next size of wire in the stretch that is enough, among sizes usual for control lines. */
  Optional<Thicker> thicker(Stretch stretch) {
    if (!lineCanHelp() || stretch.size().isEmpty()) {
      return Optional.empty();
    }
    ConductorTable table = new ConductorTable(tables);
    ConductorSize now = stretch.size().get();
    Optional<Double> ohmNow = table.ohmPerKm(now, stretch.flexible()).map(Cited::value);
    return ohmNow.flatMap(
        old ->
            sizesAbove(now)
                .flatMap(
                    size ->
                        table.ohmPerKm(size, stretch.flexible()).stream()
                            .map(ohm -> new Thicker(size, with(stretch, ohm.value() / old))))
                .filter(better -> better.volts() >= needed)
                .findFirst());
  }

  /**
   * The longest the stretch may be, in metres, all else as it is; empty if no length would do or
   * its cores have no common length.
   */
  OptionalDouble longest(Stretch stretch) {
    if (!lineCanHelp() || stretch.metres().isEmpty() || stretch.ohms() <= 0) {
      return OptionalDouble.empty();
    }
    double left = allowed() - (loss.all() - stretch.ohms());
    double metres = Math.floor(stretch.metres().getAsDouble() * left / stretch.ohms());
    return metres >= 1 ? OptionalDouble.of(metres) : OptionalDouble.empty();
  }

  /** The size that is enough, in place of that of the stretch's run. */
  List<Change> change(CoilFeed feed, Stretch stretch) {
    Optional<Change> resistor =
        smaller()
            .flatMap(
                ohms ->
                    loss.resistor()
                        .flatMap(Part.Resistor::resistance)
                        .map(r -> new Change(r.mark(), ohms)));
    if (resistor.isPresent()) {
      return List.of(resistor.get());
    }
    return thicker(stretch).stream()
        .flatMap(
            better ->
                Optional.ofNullable(feed.study().circuit().netlist().runs().get(stretch.name()))
                    .flatMap(Run::size)
                    .map(size -> new Change(size.mark(), Printed.of(better.size())))
                    .stream())
        .toList();
  }

  /** What the supply must give at its lowest, with the line as it is. */
  double lowestSource() {
    return needed * source / coil;
  }

  /** Volts at the coil if the stretch had {@code factor} times its resistance. */
  private double with(Stretch stretch, double factor) {
    return across(loss.all() - stretch.ohms() + stretch.ohms() * factor);
  }

  private Stream<ConductorSize> sizesAbove(ConductorSize now) {
    double most = tables.figure("coil.largest-control-wire").value();
    return WireSizes.above(now, tables).filter(s -> s.mm2() <= most);
  }

  /**
   * All of it as advice.
   *
   * @param most the stretch that loses most, if there is a line
   */
  String inWords(CoilFeed feed, Optional<Stretch> most) {
    List<String> ways = new ArrayList<>();
    smaller()
        .ifPresent(
            ohms ->
                ways.add(
                    "%s of at most %s"
                        .formatted(loss.resistor().map(Part::name).orElseThrow(), ohms)));
    most.ifPresent(
        stretch -> {
          thicker(stretch)
              .ifPresent(
                  better ->
                      ways.add(
                          "%s in %s leaves about %s"
                              .formatted(
                                  Printed.of(better.size()),
                                  stretch.name(),
                                  Printed.volts(better.volts()))));
          longest(stretch)
              .ifPresent(
                  metres ->
                      ways.add(
                          "%s no longer than %s"
                              .formatted(stretch.name(), Printed.of(metres, Dimension.LENGTH))));
        });
    // a supply of no volts at all has no share that could be raised
    boolean supplyCanHelp = coil() > 0 && Double.isFinite(lowestSource());
    if (supplyCanHelp && feed.sources().stream().allMatch(Source::isDirect)) {
      ways.add(
          "a supply that never falls below %s"
              .formatted(Printed.atLeast(lowestSource(), Dimension.VOLTAGE)));
    }
    ways.add(
        "a coil that pulls in from %s of its %s"
            .formatted(
                Printed.atMost(coil() / feed.ratedVolts(), Dimension.RATIO),
                Printed.volts(feed.ratedVolts())));
    String list = String.join("; or ", ways) + ".";
    String first = list.substring(0, 1).toUpperCase(Locale.ROOT) + list.substring(1);
    return lineCanHelp() || source > needed
        ? first
        : "No wire is thick enough: the supply falls to %s by itself. "
                .formatted(Printed.volts(source()))
            + first;
  }
}
