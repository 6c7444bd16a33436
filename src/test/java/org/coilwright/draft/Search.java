package org.coilwright.draft;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.netlist.Brief;
import org.coilwright.table.Tables;

/**
 * Looks for a circuit where the draft found none: every arrangement that can be wired at all, with
 * breakers, contactors and wires of every size, one after the other, whatever sizing says of them.
 */
final class Search {
  private static final List<String> BREAKERS =
      List.of("6", "10", "13", "15", "16", "20", "25", "30", "32", "35", "40", "50", "63");
  private static final List<String> SIZES =
      List.of("1.5 mm²", "2.5 mm²", "4 mm²", "6 mm²", "10 mm²", "16 mm²", "25 mm²");
  private static final List<String> GAUGES =
      List.of("14 AWG", "12 AWG", "10 AWG", "8 AWG", "6 AWG", "4 AWG");

  private Search() {}

  /** The netlist of one that passes. */
  static Optional<String> through(Brief brief, Tables tables, Judges judges) {
    Job job = ((JobReader.Whole) JobReader.read(brief, tables)).job();
    Proof proof = new Proof(tables, judges);
    Map<String, PartKind> kinds = PartKind.all();
    double least = job.power().nominal() / job.volts() / (job.isThree() ? Math.sqrt(3) : 1);
    for (Arrangement arrangement : Arrangement.all()) {
      boolean wired = job.supply().isPresent() || !arrangement.needs().contains("auxiliary supply");
      if (!wired || (arrangement.isOnePole() && job.lines() > 1)) {
        continue;
      }
      // what no breaker and no wire changes rules an arrangement out at once
      String first = netlist(job, arrangement, kinds, BREAKERS.get(0), sizes(job).get(0));
      if (Proof.against(proof.quick(first)).stream()
          .anyMatch(f -> f.rule().group().matches("drive|coil|supply|record|load"))) {
        continue;
      }
      for (String breaker : BREAKERS) {
        double amps = Double.parseDouble(breaker);
        for (String size : amps < least || amps > 2.5 * least ? List.<String>of() : sizes(job)) {
          String text = netlist(job, arrangement, kinds, breaker, size);
          if (Proof.against(proof.quick(text)).isEmpty()
              && Proof.against(proof.of(text)).isEmpty()
              && Proof.vital(proof.of(text)).isEmpty()) {
            return Optional.of(text);
          }
        }
      }
    }
    return Optional.empty();
  }

  private static List<String> sizes(Job job) {
    return job.nec() ? GAUGES : SIZES;
  }

  private static String netlist(
      Job job, Arrangement arrangement, Map<String, PartKind> kinds, String breaker, String size) {
    Figures figures =
        new Figures(Map.of())
            .with("breaker", breaker)
            .with("contactor", "63")
            .with("control-breaker", job.nec() ? "15" : "6")
            .with("load.size", size)
            .with("supply.size", job.nec() ? "2 AWG" : "35 mm²")
            .with("control.size", job.nec() ? "12 AWG" : "2.5 mm²")
            .with("elv.size", job.nec() ? "14 AWG" : "2.5 mm²")
            .with("capacity", "25 kA")
            .with("F0.amps", "100")
            .with("hold", "6.5")
            .with("pick-up", "97.5")
            .with("hold-watts", "2.1")
            .with("coil-watts", "6");
    for (String part : List.of("K1", "G1", "B1", "F3")) {
      String kind = arrangement.parts().get(part);
      PartKind named = kind == null ? null : kinds.get(kind);
      if (named != null) {
        for (var step : named.steps(job.volts()).entrySet()) {
          List<String> values = step.getValue();
          figures = figures.with(part + "." + step.getKey(), values.get(values.size() - 1));
        }
      }
    }
    return Sketch.of(job, arrangement, figures, kinds).text(List.of(), "");
  }
}
