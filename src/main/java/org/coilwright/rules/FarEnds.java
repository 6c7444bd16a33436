package org.coilwright.rules;

import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.circuit.Routes;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Quantity;
import org.coilwright.sizing.Found;
import org.coilwright.sizing.PowerSide;
import org.coilwright.sizing.WayOhms;
import org.coilwright.table.Tables;

/**
 * How far away a short-circuit can be that one device has to end: for each stretch the wires from
 * the mains to the farthest end behind it that no smaller device guards. The way back is taken as
 * like the way there.
 */
final class FarEnds {
  private final Circuit circuit;
  private final Tables tables;
  private final IdentityHashMap<Stretch, Found<Double>> ohms = new IdentityHashMap<>();

  private FarEnds(Circuit circuit, Tables tables) {
    this.circuit = circuit;
    this.tables = tables;
  }

  static FarEnds of(PowerSides.Seen seen, Tables tables) {
    Circuit circuit = seen.side().circuit();
    FarEnds ends = new FarEnds(circuit, tables);
    Map<Conductor, Stretch> of = new LinkedHashMap<>();
    for (Stretch stretch : seen.stretches()) {
      stretch.wires().forEach(w -> of.put(w, stretch));
    }
    Routes routes = circuit.routes(PowerSide::isWay);
    List<Node> lines =
        circuit.branches(Source.class).stream().filter(s -> !s.isDirect()).map(Source::to).toList();
    of.forEach(
        (wire, stretch) -> {
          if (!stretch.neutral() && stretch.guard().isPresent()) {
            lines.stream()
                .flatMap(line -> through(routes, line, wire).stream())
                .findFirst()
                .ifPresent(path -> ends.add(path, stretch, of));
          }
        });
    return ends;
  }

  /** The way from a line through a wire to its far end. */
  private static Optional<List<Branch>> through(Routes routes, Node line, Conductor wire) {
    Optional<Path> to = routes.shortest(line, wire.to());
    Optional<Path> from = routes.shortest(line, wire.from());
    if (to.isEmpty() || from.isEmpty()) {
      return Optional.empty();
    }
    List<Branch> longer =
        to.get().branches().contains(wire) ? to.get().branches() : from.get().branches();
    return Optional.of(longer);
  }

  private void add(List<Branch> way, Stretch end, Map<Conductor, Stretch> of) {
    Found<WayOhms> found = WayOhms.of(way, tables);
    Found<Double> here =
        found instanceof Found.Unknown<WayOhms> unknown
            ? new Found.Unknown<>(unknown.missing(), unknown.why())
            : new Found.Known<>(found.known().orElseThrow().ohms());
    for (Branch branch : way) {
      Stretch passed = branch instanceof Conductor wire ? of.get(wire) : null;
      if (passed != null && passed.guard().equals(end.guard())) {
        ohms.merge(passed, here, FarEnds::farther);
      }
    }
  }

  private static Found<Double> farther(Found<Double> a, Found<Double> b) {
    if (a instanceof Found.Unknown<Double>) {
      return a;
    }
    return b.known().filter(o -> o <= a.known().orElse(0.0)).isPresent() ? a : b;
  }

  /**
   * The least current of a short-circuit that the device of a stretch has to end, A.
   *
   * @param fault what the mains can drive
   */
  Found<Double> least(Stretch stretch, Written<Quantity> fault) {
    Found<Double> found = ohms.getOrDefault(stretch, new Found.Known<>(0.0));
    if (found instanceof Found.Unknown<Double> unknown) {
      return unknown;
    }
    Optional<Site.MainsSupply> mains = circuit.netlist().site().mains();
    double volts =
        circuit.branches(Source.class).stream()
            .filter(s -> !s.isDirect())
            .flatMap(s -> s.volts().stream())
            .mapToDouble(Quantity::nominal)
            .min()
            .orElse(0);
    double drives = fault.value().low();
    boolean neutralIsEarth =
        mains
            .flatMap(Site.MainsSupply::earthing)
            .filter(e -> e.value().startsWith("TN"))
            .isPresent();
    double outside =
        mains
            .flatMap(Site.MainsSupply::loopImpedance)
            .filter(any -> neutralIsEarth)
            .map(l -> l.value().high())
            .orElse(volts / drives);
    double around = outside + 2 * found.known().orElse(0.0);
    double low = tables.figure("sizing.lowest-voltage").value();
    return new Found.Known<>(Math.min(drives, low * volts / around));
  }
}
