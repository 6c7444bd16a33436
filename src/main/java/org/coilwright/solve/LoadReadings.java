package org.coilwright.solve;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.circuit.Branch.LoadElement;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.netlist.Terminal;
import org.coilwright.quantity.CurrentKind;

/** Reads off a state what a load does. */
final class LoadReadings {
  /** A load that takes less than this share of its rated power is off. */
  private static final double ON = 0.01;

  private final Lookup lookup;
  private final Extremes extremes;

  LoadReadings(Lookup lookup, Extremes extremes) {
    this.lookup = lookup;
    this.extremes = extremes;
  }

  private List<LoadElement> elementsOf(String load) {
    return lookup.model().setup.circuit.branchesOf(load).stream()
        .filter(LoadElement.class::isInstance)
        .map(LoadElement.class::cast)
        .toList();
  }

  LoadReading of(String load, State state) {
    double watts = 0;
    double rated = 0;
    Map<String, double[]> sums = new LinkedHashMap<>();
    Map<String, List<String>> linesAt = new LinkedHashMap<>();
    for (LoadElement branch : elementsOf(load)) {
      rated += branch.ratedWatts().orElse(0);
      ZoneInState here = lookup.at(branch, state);
      ZoneFlow flow = here.flow(Corner.NOMINAL);
      Element element = lookup.elementOf(here.zone, branch);
      if (flow.amps(element) < CoilReadings.NOTHING_AMPS) {
        continue;
      }
      watts += flow.watts(element);
      Ways ways = Ways.withPassives(flow);
      for (boolean first : new boolean[] {true, false}) {
        for (Terminal terminal : (first ? branch.from() : branch.to()).terminals()) {
          if (terminal.part().equals(load)) {
            double[] sum = sums.computeIfAbsent(terminal.pin(), p -> new double[3]);
            add(sum, flow, element, first ? 1 : -1);
            linesAt.put(terminal.pin(), ways.linesAt(first ? element.from() : element.to()));
          }
        }
      }
    }
    Map<String, Double> amps = new LinkedHashMap<>();
    sums.forEach(
        (pin, sum) -> {
          double size = Math.hypot(sum[0], Math.hypot(sum[1], sum[2]));
          if (size > CoilReadings.NOTHING_AMPS) {
            amps.put(pin, size);
          }
        });
    List<String> lines =
        amps.keySet().stream()
            .flatMap(pin -> linesAt.getOrDefault(pin, List.of()).stream())
            .distinct()
            .sorted()
            .toList();
    return new LoadReading(watts > 0 && watts >= ON * rated, watts, amps, lines);
  }

  private static void add(double[] sum, ZoneFlow flow, Element element, int sign) {
    int e = element.number();
    sum[0] += sign * flow.direct().iRe[e];
    sum[1] += sign * flow.alternating().iRe[e];
    sum[2] += sign * flow.alternating().iIm[e];
  }

  /** Empty if nothing reaches the load in this state. */
  Optional<LoadVolts> volts(String load, State state) {
    return elementsOf(load).stream()
        .map(branch -> volts(branch, state))
        .filter(v -> v.nominal() > Extremes.NOTHING)
        .max(
            Comparator.comparingDouble(
                v -> v.rated() > 0 ? Math.abs(Math.log(v.nominal() / v.rated())) : 0));
  }

  private LoadVolts volts(LoadElement branch, State state) {
    ZoneInState here = lookup.at(branch, state);
    Element element = lookup.elementOf(here.zone, branch);
    ZoneFlow nominal = here.flow(Corner.NOMINAL);
    Extremes.Range range =
        extremes.of(
            lookup.atWorst(branch, state, z -> -z.flow(Corner.LOWEST).volts(element)),
            lookup.atWorst(branch, state, z -> z.flow(Corner.HIGHEST).volts(element)),
            element);
    return new LoadVolts(
        branch.ratedVolts().orElse(0),
        nominal.volts(element),
        CoilReadings.clean(range.lowest().volts()),
        extremes.lowestInWords(
            range.lowest(), supply(here, range.lowest().corner()), CurrentKind.AC),
        CoilReadings.clean(range.highest().volts()),
        extremes.highestInWords(range.highest(), supply(here, range.highest().corner())));
  }

  private double supply(ZoneInState here, Corner corner) {
    return here.zone.sources().stream()
        .mapToDouble(
            (Source s) ->
                lookup.model().setup.sources.volts(s, corner.supply()) * here.share(s, corner))
        .max()
        .orElse(0);
  }
}
