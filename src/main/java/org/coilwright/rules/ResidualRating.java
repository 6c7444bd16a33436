package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.sizing.Overcurrent;
import org.coilwright.sizing.PowerSide.Demand;
import org.coilwright.sizing.Series;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** The rated current of a residual-current device, which nothing in it watches over. */
final class ResidualRating {
  private final RuleFacts facts;
  private final Tables tables;
  private final Basis basis;

  ResidualRating(RuleFacts facts, Tables tables) {
    this.facts = facts;
    this.tables = tables;
    basis =
        new Basis(
            List.of(
                tables.source("iec-60364-5-53").cite()
                    + ": overload protection of residual-current devices"),
            Standing.FROM_MEMORY);
  }

  /** What is to be said of a device whose most loaded pole is {@code pole}. */
  Outcome judge(PowerSides.Seen seen, Part.Protective rcd, Branch pole) {
    Circuit circuit = seen.side().circuit();
    List<Part> loads = seen.side().loadsThrough(pole);
    List<String> at = new ArrayList<>(List.of(rcd.name()));
    loads.forEach(l -> at.add(l.name()));
    Optional<Written<Quantity>> rating = rcd.rating();
    Subject subject =
        new Subject(facts, rating.map(Written::mark).orElse(rcd.head().mark()), List.copyOf(at));
    Optional<Demand> demand = seen.side().demand(pole);
    if (rating.isEmpty() || demand.isEmpty()) {
      return subject.undecided(
          rating.isEmpty() ? "rating of " + rcd.name() : DeviceLoads.unknown(seen.side(), loads),
          "Whether %s carries its loads is open.".formatted(rcd.name()));
    }
    double has = rating.get().value().nominal();
    Demand draws = demand.get();
    if (Comparison.exceeds(draws.worst(), has)) {
      return tooMuch(subject, rcd, draws, has, loads);
    }
    Optional<Part> ahead = ahead(seen, rcd);
    OptionalDouble lets = ahead.map(Overcurrent::rating).orElse(OptionalDouble.empty());
    OptionalDouble behind =
        linePoles(circuit, rcd).stream()
            .map(c -> DeviceLoads.behind(circuit, c))
            .reduce((a, b) -> a.isEmpty() || b.isEmpty() ? OptionalDouble.empty() : larger(a, b))
            .orElse(OptionalDouble.empty());
    String carries =
        "%s %s %s and %s carries %s"
            .formatted(
                draws.draws(),
                Printed.amps(draws.worst()),
                draws.words(),
                rcd.name(),
                Printed.of(has, Dimension.CURRENT));
    Measure value = new Measure(draws.worst(), "A");
    Measure limit = new Measure(has, "A");
    if (lets.isPresent() && !Comparison.exceeds(lets.getAsDouble(), has)) {
      return subject.satisfied(
          "%s; %s ahead of it is %s."
              .formatted(carries, name(ahead), Printed.of(lets.getAsDouble(), Dimension.CURRENT)),
          value,
          limit,
          basis);
    }
    if (behind.isPresent() && !Comparison.exceeds(behind.getAsDouble(), has)) {
      return subject.satisfied(
          "%s; the devices behind it are %s together."
              .formatted(carries, Printed.of(behind.getAsDouble(), Dimension.CURRENT)),
          value,
          limit,
          basis);
    }
    if (lets.isEmpty()) {
      return subject.undecided(
          ahead.map(a -> "rating of " + a.name()).orElse("the device ahead of " + rcd.name()),
          "%s; what keeps more than that away from it is not written%s."
              .formatted(
                  carries,
                  behind.isPresent()
                      ? ": the devices behind it are %s together"
                          .formatted(Printed.of(behind.getAsDouble(), Dimension.CURRENT))
                      : ""));
    }
    Printed.Pair pair = Printed.pair(lets.getAsDouble(), has, Dimension.CURRENT);
    return subject
        .violated(
            "nothing keeps the current of %s within its rating".formatted(rcd.name()),
            "It is for %s and has no overload release; %s ahead of it lets %s through: %s more%s."
                .formatted(
                    pair.limit(),
                    name(ahead),
                    pair.value(),
                    pair.apart(),
                    behind.isPresent()
                        ? ", and the devices behind it are %s together"
                            .formatted(Printed.of(behind.getAsDouble(), Dimension.CURRENT))
                        : ""),
            "carries " + pair.limit())
        .alsoAt(ahead.map(a -> a.head().mark()).orElse(rcd.head().mark()), "lets more through")
        .measured(new Measure(lets.getAsDouble(), "A"), limit)
        .todo("Take a residual-current device of %s or more.".formatted(pair.value()), basis);
  }

  private Outcome tooMuch(
      Subject subject, Part.Protective rcd, Demand draws, double has, List<Part> loads) {
    Printed.Pair pair = Printed.pair(draws.worst(), has, Dimension.CURRENT);
    Subject.Finding finding =
        subject
            .violated(
                "%s more than %s carries".formatted(draws.draws(), rcd.name()),
                "%s %s (%s); %s carries %s: too much by %s."
                    .formatted(
                        loads.size() > 1 ? "Together" : "It draws",
                        pair.value(),
                        draws.words(),
                        rcd.name(),
                        pair.limit(),
                        pair.apart()),
                "carries " + pair.limit())
            .measured(new Measure(draws.worst(), "A"), new Measure(has, "A"));
    loads.forEach(l -> finding.alsoAt(l.head().mark(), "behind it"));
    return finding.todo(
        "Take a residual-current device rated for %s or more, or spread the loads."
            .formatted(
                Series.breakerAtLeast(draws.worst(), tables)
                    .map(r -> Printed.of(r.value(), Dimension.CURRENT))
                    .orElse(Printed.atLeast(draws.worst(), Dimension.CURRENT))),
        basis);
  }

  /** The device that limits what reaches its line poles. */
  private static Optional<Part> ahead(PowerSides.Seen seen, Part.Protective rcd) {
    return linePoles(seen.side().circuit(), rcd).stream()
        .flatMap(c -> seen.guards().of(c.from()).stream())
        .findFirst();
  }

  private static List<Contact> linePoles(Circuit circuit, Part.Protective rcd) {
    return circuit.branchesOf(rcd.name()).stream()
        .filter(Contact.class::isInstance)
        .map(Contact.class::cast)
        .filter(c -> !c.neutralPole())
        .toList();
  }

  private static OptionalDouble larger(OptionalDouble a, OptionalDouble b) {
    return a.getAsDouble() < b.getAsDouble() ? b : a;
  }

  private static String name(Optional<Part> part) {
    return part.map(Part::name).orElse("the device");
  }
}
