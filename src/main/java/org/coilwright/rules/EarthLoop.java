package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Run;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.sizing.Found;
import org.coilwright.sizing.PowerSide;
import org.coilwright.sizing.WayOhms;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/**
 * The way of an earth fault at a load: out by the line that is farthest, back by the protective
 * conductor, and on outside by what the netlist states for the mains.
 *
 * @param way out to the load
 * @param back the protective conductor, from the mains to the load
 * @param outside Ω beyond the mains of the circuit, as written
 * @param wires Ω of both ways, as warm as their insulation allows
 * @param celsius °C of the warmest of them
 * @param source A that the source can give at least and at most; empty if it is not written
 */
record EarthLoop(
    PowerSide.Way way,
    Path back,
    Written<Quantity> outside,
    double wires,
    double celsius,
    Optional<Written<Quantity>> source,
    List<Cited<?>> cited) {

  /** Works the loop of a load out; unknown where one of its wires or the mains is. */
  static Found<EarthLoop> of(PowerSide side, Part load, Path back, Tables tables) {
    Optional<Site.MainsSupply> mains = side.circuit().netlist().site().mains();
    Optional<Written<Quantity>> outside = mains.flatMap(Site.MainsSupply::loopImpedance);
    if (outside.isEmpty()) {
      return new Found.Unknown<>(
          "site.mains.loop-impedance", "The loop impedance of the mains is not written.");
    }
    Optional<Found.Unknown<EarthLoop>> unwritten = unwritten(back);
    if (unwritten.isPresent()) {
      return unwritten.get();
    }
    Found<EarthLoop> farthest =
        new Found.Unknown<>("a line to " + load.name(), "No line leads to it.");
    for (PowerSide.Way way : side.linesTo(load)) {
      List<Branch> around = new ArrayList<>(way.path().branches());
      around.addAll(back.branches());
      Found<WayOhms> found = WayOhms.of(around, tables);
      if (found instanceof Found.Unknown<WayOhms> unknown) {
        return new Found.Unknown<>(unknown.missing(), unknown.why());
      }
      WayOhms ohms = found.known().orElseThrow();
      if (farthest.known().filter(f -> f.wires() >= ohms.ohms()).isEmpty()) {
        farthest =
            new Found.Known<>(
                new EarthLoop(
                    way,
                    back,
                    outside.get(),
                    ohms.ohms(),
                    ohms.hottest().orElse(0),
                    mains.flatMap(Site.MainsSupply::faultCurrent),
                    List.copyOf(ohms.cited())));
      }
    }
    return farthest;
  }

  /**
   * A protective conductor that is in no run and has no length is no bridge of a few centimetres.
   */
  private static Optional<Found.Unknown<EarthLoop>> unwritten(Path back) {
    return back.branches().stream()
        .filter(b -> b instanceof Conductor wire && wire.bridge())
        .map(
            b ->
                new Found.Unknown<EarthLoop>(
                    "length of %s to %s".formatted(b.from(), b.to()),
                    "The length of the protective conductor from %s to %s is not written."
                        .formatted(b.from(), b.to())))
        .findFirst();
  }

  /** What a wire is called: its run, or its two ends. */
  static String name(Conductor wire) {
    return wire.run().map(Run::name).orElse("%s to %s".formatted(wire.from(), wire.to()));
  }

  /** Ω of the whole loop. */
  double ohms() {
    return outside.value().high() + wires;
  }

  /** Nominal voltage of the line to earth, V. */
  double toEarth() {
    return way.source().volts().map(Quantity::nominal).orElse(0.0);
  }

  /** {@code 0.4 Ω outside + 0.193 Ω of wires at 70 °C = 0.593 Ω}. */
  String words() {
    return "%s outside + %s of wires at %s = %s"
        .formatted(
            Printed.of(outside.value().high(), Dimension.RESISTANCE),
            Printed.of(wires, Dimension.RESISTANCE),
            Printed.of(celsius, Dimension.TEMPERATURE),
            Printed.of(ohms(), Dimension.RESISTANCE));
  }
}
