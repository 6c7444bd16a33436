package org.coilwright.rules;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.sizing.Found;
import org.coilwright.sizing.Overcurrent;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/**
 * The least protective conductor of a load by table: beside the thickest line that lies with it,
 * with practice nec behind its device.
 *
 * @param words what asks for it
 */
record EarthSize(ConductorSize size, Part device, String words, Cited<Double> cited) {
  /** Looks it up; unknown where the device or a size is. */
  static Found<EarthSize> of(Part load, Conductor earth, PowerSides.Seen seen, Tables tables) {
    Optional<Part> device =
        seen.side().waysOf(load).stream()
            .filter(w -> w.line() && !w.path().nodes().isEmpty())
            .flatMap(
                w -> seen.guards().of(w.path().nodes().get(w.path().nodes().size() - 1)).stream())
            .findFirst();
    if (device.isEmpty()) {
      return new Found.Unknown<>("an overcurrent device before " + load.name(), "None is there.");
    }
    List<Conductor> lines =
        seen.index().behind(device.get()).stream()
            .filter(s -> s.loads().contains(load))
            .flatMap(s -> s.wires().stream())
            .filter(w -> w.size().isPresent())
            .toList();
    // those that lie with it, else all behind the device
    Optional<Conductor> line =
        lines.stream()
            .filter(w -> w.run().isPresent() && w.run().equals(earth.run()))
            .max(Comparator.comparingDouble(EarthSize::area))
            .or(() -> lines.stream().max(Comparator.comparingDouble(EarthSize::area)));
    if (line.isEmpty()) {
      return new Found.Unknown<>("size of the lines to " + load.name(), "It is not written.");
    }
    double thickest = area(line.get());
    if (seen.stretches().get(0).practice() == Site.Practice.NEC) {
      OptionalDouble rating = Overcurrent.rating(device.get());
      Optional<Cited<Double>> gauge =
          rating.isEmpty()
              ? Optional.empty()
              : tables.lookup("protective-conductor-nec", Map.of(), rating.getAsDouble(), "awg");
      if (gauge.isEmpty()) {
        return new Found.Unknown<>(
            "rating of " + device.get().name(), "No table gives a size for its device.");
      }
      ConductorSize size = ConductorSize.ofAwg((int) Math.round(gauge.get().value()));
      boolean asLine = size.mm2() > thickest;
      return new Found.Known<>(
          new EarthSize(
              asLine ? line.get().size().orElse(size) : size,
              device.get(),
              asLine
                  ? "no more than its lines"
                  : "behind %s of %s"
                      .formatted(
                          device.get().name(), Printed.of(rating.getAsDouble(), Dimension.CURRENT)),
              gauge.get()));
    }
    Optional<Cited<Double>> size =
        tables.lookup("protective-conductor-size", Map.of(), thickest, "protective");
    return size.<Found<EarthSize>>map(
            s ->
                new Found.Known<>(
                    new EarthSize(
                        ConductorSize.ofMm2(s.value()),
                        device.get(),
                        "beside lines of " + line.get().size().map(Printed::of).orElse(""),
                        s)))
        .orElseGet(
            () ->
                new Found.Unknown<>(
                    "tabulated size of " + EarthLoop.name(line.get()),
                    "No table gives a protective conductor for it."));
  }

  /** mm². */
  static double area(Conductor wire) {
    return wire.size().map(ConductorSize::mm2).orElse(0.0);
  }
}
