package org.coilwright.rules;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Run;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Subject;
import org.coilwright.sizing.ConductorHeating;
import org.coilwright.sizing.ConductorHeating.Answer;
import org.coilwright.sizing.Found;
import org.coilwright.sizing.Overcurrent;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/**
 * A lead too thin for the device before it, whose own overload device stands at its far end with
 * nothing branching off in between. That is allowed where the device before it ends every
 * short-circuit in time (IEC 60364-4-43 433.2.2, 434.2.2), and for a few metres if it is run so
 * that none is likely, which the netlist does not tell.
 *
 * @param stretch the leads, each to the same device
 * @param end the device at the end
 */
record Tap(Stretch stretch, Part end) {

  /** The device at the end of a wire, if it is the only thing that the wire feeds. */
  static Optional<Part> endOf(Stretch stretch, Conductor wire) {
    return stretch
        .guards()
        .endsIn(wire)
        .filter(found -> found.size() == 1)
        .map(found -> found.get(0))
        .filter(d -> Overcurrent.rating(d).isPresent());
  }

  /** Length of the lead from where it leaves the thicker wire, m; empty if it is not written. */
  private OptionalDouble length() {
    double sum = 0;
    for (Conductor wire : stretch.wires()) {
      if (wire.length().isEmpty()) {
        return OptionalDouble.empty();
      }
      sum += wire.length().getAsDouble();
    }
    return OptionalDouble.of(sum);
  }

  /**
   * Satisfied, undecided, or empty where it is allowed in no way.
   *
   * @param may what its end device may be at most
   */
  Optional<Outcome> judge(Subject subject, LargestDevice may, PowerSides.Seen seen, Tables tables) {
    Part before = stretch.guard().orElseThrow();
    double rating = Overcurrent.rating(end).orElseThrow();
    String ends =
        "%s of %s at the end of %s protects it from overload"
            .formatted(end.name(), Printed.of(rating, Dimension.CURRENT), stretch.name());
    Cited<Double> most = tables.figure("sizing.tap-length");
    boolean nec = stretch.practice() == Site.Practice.NEC;
    Outcome.Undecided open = null;
    if (!nec) {
      Found<ConductorHeating.Conductor> wire = conductor(before, seen, tables);
      if (wire instanceof Found.Unknown<ConductorHeating.Conductor> unknown) {
        open =
            Unknowns.outcome(
                subject,
                "%s; whether %s does from a short-circuit is open.".formatted(ends, before.name()),
                unknown);
      } else {
        Answer answer =
            new ConductorHeating(stretch.practice(), tables).judge(wire.known().orElseThrow());
        if (answer instanceof Answer.Stands stands) {
          List<Cited<?>> cited = new java.util.ArrayList<>(may.cited());
          cited.addAll(stands.cited());
          cited.add(most);
          return Optional.of(
              subject.satisfied(
                  "%s (433.2.2), and %s from a short-circuit: %s."
                      .formatted(ends, before.name(), stands.words()),
                  new Measure(rating, "A"),
                  new Measure(may.amps(), "A"),
                  Basis.of(cited)));
        }
      }
    }
    OptionalDouble length = length();
    if (length.isEmpty()) {
      return Optional.of(
          subject.undecided(
              "length of " + stretch.name(),
              ends + ", if it is short; its length is not written."));
    }
    if (!Comparison.exceeds(length.getAsDouble(), most.value())) {
      return Optional.of(
          subject.unsettled(
              "how %s is run to %s".formatted(stretch.name(), end.name()),
              "%s. %s may be left out before it as it is %s long, not above %s, where it is run so that a short-circuit is unlikely and nothing near it burns%s."
                  .formatted(
                      ends,
                      nec ? "A device at its beginning" : "Protection from a short-circuit",
                      Printed.of(length.getAsDouble(), Dimension.LENGTH),
                      Printed.given(most.value(), Dimension.LENGTH),
                      nec ? " (240.21(B)(1), a feeder tap in a raceway)" : " (434.2.1)"),
              "The netlist cannot settle it: look on site how %s is run, or put a fuse of its own where it begins."
                  .formatted(stretch.name())));
    }
    return Optional.ofNullable(open);
  }

  private Found<ConductorHeating.Conductor> conductor(
      Part before, PowerSides.Seen seen, Tables tables) {
    Optional<Written<Quantity>> fault =
        stretch.side().circuit().netlist().site().mains().flatMap(Site.MainsSupply::faultCurrent);
    if (fault.isEmpty()) {
      return new Found.Unknown<>(
          "site.mains.fault-current", "The fault current of the mains is not written.");
    }
    Optional<Cited<Double>> k =
        stretch.core().shortCircuitFactor(stretch.size().orElseThrow(), tables);
    if (k.isEmpty()) {
      return new Found.Unknown<>(
          "short-circuit factor k of " + stretch.name(), "No table read here gives its k.");
    }
    Found<Double> least = FarEnds.of(seen, tables).least(seen.wholeOf(stretch), fault.get());
    if (least instanceof Found.Unknown<Double> unknown) {
      return new Found.Unknown<>(unknown.missing(), unknown.why());
    }
    return new Found.Known<>(
        new ConductorHeating.Conductor(
            before,
            least.known().orElseThrow(),
            fault.get().value().high(),
            OptionalDouble.empty(),
            k.get(),
            stretch.size().orElseThrow().mm2(),
            OptionalDouble.empty()));
  }

  /**
   * Length of the way from a line of the mains to the far end of a wire, m; unknown where one of
   * its wires has none.
   */
  static Found<Double> metres(List<Branch> way) {
    double sum = 0;
    for (Branch branch : way) {
      if (branch instanceof Conductor wire) {
        if (wire.length().isEmpty()) {
          String name =
              wire.run().map(Run::name).orElse("%s to %s".formatted(wire.from(), wire.to()));
          return new Found.Unknown<>(
              "length of " + name, "The length of %s is not written.".formatted(name));
        }
        sum += wire.length().getAsDouble();
      }
    }
    return new Found.Known<>(sum);
  }
}
