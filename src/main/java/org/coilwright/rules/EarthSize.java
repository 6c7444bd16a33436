package org.coilwright.rules;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.netlist.Method;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Run;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.sizing.Core;
import org.coilwright.sizing.Found;
import org.coilwright.sizing.Overcurrent;
import org.coilwright.sizing.Series;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/**
 * The least protective conductor of a load, controller or supply by table: beside the thickest line
 * that lies with it, with practice nec behind its device.
 *
 * @param words what asks for it
 */
record EarthSize(ConductorSize size, Part device, String words, Cited<Double> cited) {
  /** Looks it up; unknown where the device or a size is. */
  static Found<EarthSize> of(Part load, Conductor earth, PowerSides.Seen seen, Tables tables) {
    Optional<Part> device =
        seen.side().linesTo(load).stream()
            .filter(w -> !w.path().nodes().isEmpty())
            .flatMap(
                w -> seen.guards().of(w.path().nodes().get(w.path().nodes().size() - 1)).stream())
            .findFirst();
    if (device.isEmpty()) {
      return new Found.Unknown<>("an overcurrent device before " + load.name(), "None is there.");
    }
    List<Stretch> behind =
        seen.index().behind(device.get()).stream()
            .filter(s -> !s.neutral() && feeds(s, load, seen))
            .filter(s -> s.wires().stream().anyMatch(w -> w.size().isPresent()))
            .toList();
    // those that lie with it, else all behind the device
    Optional<Stretch> line =
        behind.stream()
            .filter(s -> earth.run().isPresent() && earth.run().equals(s.first().run()))
            .max(Comparator.comparingDouble(s -> area(s.first())))
            .or(() -> behind.stream().max(Comparator.comparingDouble(s -> area(s.first()))));
    if (line.isEmpty()) {
      return new Found.Unknown<>("size of the lines to " + load.name(), "It is not written.");
    }
    return line.get().practice() == Site.Practice.NEC
        ? gauge(line.get(), device.get(), earth, seen, tables)
        : metric(line.get(), device.get(), earth, seen, tables);
  }

  /** True for a stretch in a line of a load, or in the way to a mains input. */
  private static boolean feeds(Stretch stretch, Part part, PowerSides.Seen seen) {
    return stretch.loads().contains(part)
        || (!seen.side().loads().contains(part)
            && seen.side().linesTo(part).stream()
                .anyMatch(w -> stretch.wires().stream().anyMatch(w.path().branches()::contains)));
  }

  /** By the device, as much thicker as the lines are thicker than they need be, and no more. */
  private static Found<EarthSize> gauge(
      Stretch line, Part device, Conductor earth, PowerSides.Seen seen, Tables tables) {
    OptionalDouble rating = Overcurrent.rating(device);
    Optional<Cited<Double>> gauge =
        rating.isEmpty()
            ? Optional.empty()
            : tables.lookup(
                "protective-conductor-nec",
                Map.of(),
                rating.getAsDouble(),
                earth.isCopper() ? "awg" : "aluminium");
    if (gauge.isEmpty()) {
      return new Found.Unknown<>(
          "rating of " + device.name(), "No table gives a size for its device.");
    }
    ConductorSize size = ConductorSize.ofAwg((int) Math.round(gauge.get().value()));
    String words =
        "behind %s of %s"
            .formatted(device.name(), Printed.of(rating.getAsDouble(), Dimension.CURRENT));
    double thickest = area(line.first());
    Optional<ConductorSize> needed =
        line.thinnest(
            tables,
            s ->
                s.may(seen.index(), tables)
                    .known()
                    .filter(may -> LargestDevice.isGuarded(s, may, tables))
                    .isPresent());
    double least =
        needed.map(n -> ConductorSize.ofAwg(n.awg().orElseThrow()).mm2()).orElse(thickest);
    if (needed.isPresent() && Comparison.exceeds(thickest, least)) {
      double times = thickest / least;
      size = atLeast(size, times);
      words +=
          ", × %s as its lines are %s where %s would do, 250.122(B)"
              .formatted(
                  Printed.of(times, Dimension.COUNT),
                  line.first().size().map(Printed::of).orElse(""),
                  Printed.of(needed.get()));
    }
    boolean asLine = size.mm2() > thickest && earth.isCopper() == line.first().isCopper();
    return new Found.Known<>(
        new EarthSize(
            asLine ? line.first().size().orElse(size) : size,
            device,
            asLine ? "no more than its lines" : words,
            gauge.get()));
  }

  /** The thinnest gauge so many times as thick. */
  private static ConductorSize atLeast(ConductorSize size, double times) {
    int gauge = size.awg().orElseThrow();
    while (gauge > ConductorSize.THICKEST_AWG
        && Comparison.fallsShort(ConductorSize.ofAwg(gauge).mm2(), size.mm2() * times)) {
      gauge--;
    }
    return ConductorSize.ofAwg(gauge);
  }

  /** Beside its lines, of another metal by the ratio of k; laid apart no less than 543.1.3. */
  private static Found<EarthSize> metric(
      Stretch line, Part device, Conductor earth, PowerSides.Seen seen, Tables tables) {
    Optional<Cited<Double>> beside =
        tables.lookup("protective-conductor-size", Map.of(), area(line.first()), "protective");
    if (beside.isEmpty()) {
      return new Found.Unknown<>(
          "tabulated size of " + EarthLoop.name(line.first()),
          "No table gives a protective conductor for it.");
    }
    double mm2 = beside.get().value();
    String words = "beside lines of " + line.first().size().map(Printed::of).orElse("");
    if (!earth.isCopper() && line.first().isCopper()) {
      Optional<Cited<Double>> k1 =
          Core.of(line.first()).shortCircuitFactor(line.first().size().orElseThrow(), tables);
      Optional<Cited<Double>> k2 =
          Core.of(earth).shortCircuitFactor(earth.size().orElseThrow(), tables);
      if (k1.isEmpty() || k2.isEmpty()) {
        return new Found.Unknown<>(
            "short-circuit factor k of " + EarthLoop.name(earth),
            "No table read here gives its k.");
      }
      mm2 *= k1.get().value() / k2.get().value();
      words +=
          " of copper, × %s ÷ %s for aluminium"
              .formatted(
                  Printed.of(k1.get().value(), Dimension.COUNT),
                  Printed.of(k2.get().value(), Dimension.COUNT));
    }
    Cited<Double> cited = beside.get();
    if (isAlone(earth, seen)) {
      Optional<Method> laid = earth.run().flatMap(Run::installed).map(Written::value);
      if (laid.isEmpty()) {
        return new Found.Unknown<>(
            "installed of " + EarthLoop.name(earth),
            "It lies apart from its lines, and how it is laid is not written.");
      }
      boolean bare = laid.get() == Method.C;
      Cited<Double> least =
          tables.figure(
              !earth.isCopper()
                  ? "sizing.earth-alone-aluminium"
                  : bare ? "sizing.earth-alone-bare" : "sizing.earth-alone-protected");
      if (Comparison.exceeds(least.value(), mm2)) {
        mm2 = least.value();
        cited = least;
        words =
            bare
                ? "laid apart from its lines and not protected from damage, 543.1.3"
                : "laid apart from its lines, 543.1.3";
      }
    }
    return new Found.Known<>(
        new EarthSize(
            ConductorSize.ofMm2(Series.wireOf(mm2, tables).orElse(mm2)), device, words, cited));
  }

  /** True if no line or neutral lies in its run; what is in no run lies inside an enclosure. */
  private static boolean isAlone(Conductor earth, PowerSides.Seen seen) {
    return earth.run().isPresent()
        && earth.run().flatMap(Run::installed).filter(w -> w.value() == Method.PANEL).isEmpty()
        && seen.stretches().stream().noneMatch(s -> s.first().run().equals(earth.run()));
  }

  /** mm². */
  static double area(Conductor wire) {
    return wire.size().map(ConductorSize::mm2).orElse(0.0);
  }
}
