package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A supply that can deliver more than a wire may carry feeds that wire without a fuse. */
final class SupplyUnfused implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("supply.unfused", Weight.FIX, "control wire without a fuse")
          .what(
              "Looks at every wire that a direct-voltage output feeds. It needs a fuse or breaker"
                  + " of at most the wire's permitted current, in the warmest air, between the"
                  + " output and it, unless the output itself is limited to that current. The"
                  + " return wires carry what the feeding wires let through, so they are looked at"
                  + " too.")
          .why(
              "A short-circuit in the line is then fed until the insulation burns: no part of the"
                  + " circuit opens.")
          .remedy(
              "Put a fuse of at most the wire's permitted current into the plus wire at the"
                  + " supply, or use thicker wire.")
          .blind(
              "Bundles, which lower what a wire may carry; the short piece between the supply and"
                  + " its fuse; fuses inside the device.")
          .sources("iec-60204-1", "vde-0298-4", "iec-60364-5-52-tables");

  private final Tables tables;

  SupplyUnfused(Tables tables) {
    this.tables = tables;
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    List<Outcome> outcomes = new ArrayList<>();
    for (DirectSupply supply : DirectSupply.of(study.circuit())) {
      ControlWires wires = ControlWires.of(study.circuit(), supply, tables);
      // a supply that nothing is wired to has no wire to overload
      if (!wires.wires().isEmpty()) {
        outcomes.add(check(wires, supply));
      }
    }
    return outcomes;
  }

  private Outcome check(ControlWires wires, DirectSupply supply) {
    Subject subject = Subject.of(FACTS, supply.output().mark(), supply.part());
    Optional<Written<Quantity>> limit = supply.output().limit();
    if (limit.isEmpty()) {
      return subject.undecided(
          supply.missing("limit"),
          "Whether %s needs a fuse is open: what it can deliver is not written."
              .formatted(supply.part()));
    }
    Optional<Conductor> unknown = wires.withoutPermit();
    if (unknown.isPresent()) {
      Conductor wire = unknown.get();
      return Subject.of(FACTS, wire.mark(), supply.part())
          .undecided(
              ControlWires.missingSize(wire),
              "Whether %s can overload the wire from %s to %s is open: no table says what it may carry."
                  .formatted(supply.part(), wire.from(), wire.to()));
    }
    Optional<String> unrated = wires.unratedFuse();
    if (unrated.isPresent()) {
      return subject.undecided(
          "rating of " + unrated.get(),
          "Whether %s protects the wires behind it is open: its rating is not written."
              .formatted(unrated.get()));
    }
    List<ControlWires.Permit> thinnestFirst = wires.thinnestFirst();
    double delivers = limit.get().value().high();
    Optional<ControlWires.Permit> exposed =
        thinnestFirst.stream()
            .filter(p -> Comparison.exceeds(delivers, p.amps()))
            .filter(wires::isExposed)
            .findFirst();
    return exposed
        .<Outcome>map(permit -> unfused(supply, limit.get(), permit, wires))
        .orElseGet(() -> protectedAll(supply, delivers, thinnestFirst.get(0), subject));
  }

  private Outcome unfused(
      DirectSupply supply,
      Written<Quantity> limit,
      ControlWires.Permit permit,
      ControlWires wires) {
    double delivers = limit.value().high();
    Printed.Pair pair = Printed.pair(delivers, permit.amps(), Dimension.CURRENT);
    Subject.Finding finding =
        Subject.of(FACTS, limit.mark(), supply.part())
            .violated(
                "%s can overload its wires".formatted(supply.part()),
                "It can deliver %s; the %s wire from %s to %s may carry %s: %s too much, and no fuse that small lies before it."
                    .formatted(
                        pair.value(),
                        permit.size(),
                        permit.wire().from(),
                        permit.wire().to(),
                        pair.limit(),
                        pair.apart()),
                "delivers up to " + pair.value())
            .alsoAt(permit.wire().mark(), "may carry " + pair.limit());
    wires
        .tooLargeFor(permit)
        .forEach(
            fuse ->
                finding.alsoAt(fuse.mark(), "lets through more than %s".formatted(pair.limit())));
    return finding
        .detail(permit.how() + ".")
        .measured(new Measure(delivers, "A"), new Measure(permit.amps(), "A"))
        .todo(
            "Put a fuse of at most %s into the plus wire at %s, or use thicker wire."
                .formatted(Printed.atMost(permit.amps(), Dimension.CURRENT), supply.part()),
            basis(permit));
  }

  private Outcome protectedAll(
      DirectSupply supply, double delivers, ControlWires.Permit thinnest, Subject subject) {
    Printed.Pair pair = Printed.pair(delivers, thinnest.amps(), Dimension.CURRENT);
    boolean limited = !Comparison.exceeds(delivers, thinnest.amps());
    return subject.satisfied(
        limited
            ? "%s delivers at most %s, and its thinnest wire (%s) may carry %s."
                .formatted(supply.part(), pair.value(), thinnest.size(), pair.limit())
            : "%s can deliver %s; a fuse protects every wire that may not carry that, the thinnest (%s) for %s."
                .formatted(supply.part(), pair.value(), thinnest.size(), pair.limit()),
        new Measure(delivers, "A"),
        new Measure(thinnest.amps(), "A"),
        basis(thinnest));
  }

  private Basis basis(ControlWires.Permit permit) {
    return new Basis(List.of(tables.source("iec-60204-1").cite()), Standing.PUBLISHED)
        .and(Basis.of(permit.from()));
  }
}
