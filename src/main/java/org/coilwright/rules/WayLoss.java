package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Run;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.sizing.Found;
import org.coilwright.sizing.LoadCurrent;
import org.coilwright.sizing.PowerSide;
import org.coilwright.sizing.WayOhms;
import org.coilwright.table.Cited;
import org.coilwright.table.ConductorTable;
import org.coilwright.table.Tables;

/**
 * What the wires to a load lose at its nominal current: there and back, or √3 times one line with
 * three lines.
 *
 * @param volts V
 * @param ohms Ω, before the √3
 * @param celsius °C of the warmest wire
 * @param three true with three lines
 * @param metres which wires were counted how often: {@code 8 × 12 m of W2}
 * @param longest the wire that loses most
 * @param ofRun Ω of {@code ohms} that lie in wires of its run and size
 */
record WayLoss(
    double volts,
    double ohms,
    double celsius,
    boolean three,
    String metres,
    List<Cited<?>> cited,
    Optional<Conductor> longest,
    double ofRun) {

  /** Adds the ways up; unknown where the size or length of a wire is. */
  static Found<WayLoss> of(PowerSide side, Part load, LoadCurrent current, Tables tables) {
    Map<String, PowerSide.Way> byPin = new LinkedHashMap<>();
    side.waysOf(load).forEach(w -> byPin.putIfAbsent(w.pin(), w));
    boolean three = side.linesOf(load).size() > 2;
    double ohms = 0;
    List<Cited<?>> cited = new ArrayList<>();
    List<Branch> counted = new ArrayList<>();
    Optional<Conductor> longest = Optional.empty();
    double most = 0;
    double hottest = 0;
    for (PowerSide.Way way : byPin.values()) {
      Found<WayOhms> found = WayOhms.of(way.path().branches(), tables);
      if (found instanceof Found.Unknown<WayOhms> unknown) {
        return new Found.Unknown<>(unknown.missing(), unknown.why());
      }
      WayOhms known = found.known().orElseThrow();
      cited.addAll(known.cited());
      hottest = Math.max(hottest, known.hottest().orElse(hottest));
      if (three && known.ohms() > ohms) {
        counted.clear();
      }
      if (!three || known.ohms() > ohms) {
        counted.addAll(way.path().branches());
      }
      if (known.ohms() > most) {
        most = known.ohms();
        longest = known.longest();
      }
      ohms = three ? Math.max(ohms, known.ohms()) : ohms + known.ohms();
    }
    double volts = current.nominal() * ohms * (three ? Math.sqrt(2 + 1) : 1);
    return new Found.Known<>(
        new WayLoss(
            volts,
            ohms,
            hottest,
            three,
            metres(counted),
            List.copyOf(cited),
            longest,
            ofRun(counted, longest, tables)));
  }

  private static double ofRun(List<Branch> counted, Optional<Conductor> longest, Tables tables) {
    List<Branch> like =
        counted.stream()
            .filter(
                b ->
                    b instanceof Conductor wire
                        && longest
                            .filter(
                                l ->
                                    l.equals(wire)
                                        || (l.run().isPresent()
                                            && l.run().equals(wire.run())
                                            && l.size().equals(wire.size())))
                            .isPresent())
            .toList();
    return WayOhms.of(like, tables).known().map(WayOhms::ohms).orElse(0.0);
  }

  /**
   * The thinnest size of the wires of {@link #ofRun} with which no more than this is lost. With
   * less loss the load draws more: the ratio of what is lost to what arrives follows the ohms.
   *
   * @param supply V, at the mains
   * @param may V
   */
  Optional<ConductorSize> thicker(double supply, double may, Tables tables) {
    if (longest.isEmpty() || longest.get().size().isEmpty()) {
      return Optional.empty();
    }
    ConductorSize now = longest.get().size().get();
    boolean flexible = longest.get().run().flatMap(Run::flexible).map(Written::value).orElse(false);
    ConductorTable table = new ConductorTable(tables);
    return table
        .ohmPerKm(now, flexible)
        .flatMap(
            old ->
                WireSizes.above(now, tables)
                    .filter(
                        size ->
                            table
                                .ohmPerKm(size, flexible)
                                .map(ohm -> ohms - ofRun + ofRun * ohm.value() / old.value())
                                .map(less -> volts / (supply - volts) * less / ohms)
                                .filter(ratio -> supply * ratio / (1 + ratio) <= may)
                                .isPresent())
                    .findFirst());
  }

  /** Wires of one name and length together, in the order of the way. */
  private static String metres(List<Branch> branches) {
    Map<String, Integer> times = new LinkedHashMap<>();
    for (Branch branch : branches) {
      if (branch instanceof Conductor wire && wire.length().isPresent()) {
        times.merge(
            "%s of %s"
                .formatted(
                    Printed.given(wire.length().getAsDouble(), Dimension.LENGTH),
                    EarthLoop.name(wire)),
            1,
            Integer::sum);
      }
    }
    List<String> words = new ArrayList<>();
    times.forEach((wire, n) -> words.add(n == 1 ? wire : n + " × " + wire));
    return words.isEmpty() ? "no wire" : String.join(", ", words);
  }
}
