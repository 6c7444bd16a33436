package org.coilwright.rules;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.coilwright.circuit.Actuator;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Comparison;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A supply that can deliver more than a wire may carry feeds that wire without a fuse. */
final class SupplyUnfused implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("supply.unfused", Weight.FIX, "control wire without a fuse")
          .what(
              "Looks at every wire that a direct-voltage output feeds. It needs a fuse or breaker"
                  + " of at most the wire's permitted current between the output and it, unless"
                  + " the output itself is limited to that current. The return wires carry what"
                  + " the feeding wires let through, so they are looked at too.")
          .why(
              "A short-circuit in the line is then fed until the insulation burns: no part of the"
                  + " circuit opens.")
          .remedy(
              "Put a fuse of at most the wire's permitted current into the plus wire at the"
                  + " supply, or use thicker wire.")
          .blind(
              "Air above 30 °C and bundles, which lower what a wire may carry; the short piece"
                  + " between the supply and its fuse; fuses inside the device.")
          .sources("iec-60204-1", "vde-0298-4");

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
      outcomes.add(check(study.circuit(), supply));
    }
    return outcomes;
  }

  /** A wire, what it may carry, and nothing but that between it and the supply. */
  private record Exposed(Conductor wire, Cited<Double> permitted) {}

  private Outcome check(Circuit circuit, DirectSupply supply) {
    Subject subject = Subject.of(FACTS, supply.output().mark(), supply.part());
    Optional<Written<Quantity>> limit = supply.output().limit();
    if (limit.isEmpty()) {
      return subject.undecided(
          supply.missing("limit"),
          "Whether %s needs a fuse is open: what it can deliver is not written."
              .formatted(supply.part()));
    }
    List<Conductor> fed = fed(circuit, supply);
    for (Conductor wire : fed) {
      if (permitted(wire).isEmpty()) {
        return Subject.of(FACTS, wire.mark(), supply.part())
            .undecided(
                "a tabulated size of the wire %s to %s".formatted(wire.from(), wire.to()),
                "Whether %s can overload the wire from %s to %s is open: no table says what it may carry."
                    .formatted(supply.part(), wire.from(), wire.to()));
      }
    }
    Optional<String> unrated = unratedFuse(circuit, fed);
    if (unrated.isPresent()) {
      return subject.undecided(
          "rating of " + unrated.get(),
          "Whether %s protects the wires behind it is open: its rating is not written."
              .formatted(unrated.get()));
    }
    return compare(circuit, supply, limit.get(), fed, subject);
  }

  private Outcome compare(
      Circuit circuit,
      DirectSupply supply,
      Written<Quantity> limit,
      List<Conductor> fed,
      Subject subject) {
    double delivers = limit.value().high();
    List<Exposed> thinnestFirst =
        fed.stream()
            .flatMap(w -> permitted(w).map(p -> new Exposed(w, p)).stream())
            .sorted(
                Comparator.comparingDouble((Exposed e) -> e.permitted().value())
                    .thenComparing(e -> -e.wire().length().orElse(0)))
            .toList();
    if (thinnestFirst.isEmpty()) {
      return subject.satisfied("%s feeds no wire.".formatted(supply.part()), Basis.of());
    }
    Optional<Exposed> exposed =
        thinnestFirst.stream()
            .filter(e -> Comparison.exceeds(delivers, e.permitted().value()))
            .filter(e -> isExposed(circuit, supply, e))
            .findFirst();
    Exposed shown = exposed.orElse(thinnestFirst.get(0));
    Printed.Pair pair = Printed.pair(delivers, shown.permitted().value(), Dimension.CURRENT);
    Measure value = new Measure(delivers, "A");
    Measure held = new Measure(shown.permitted().value(), "A");
    Basis basis =
        new Basis(List.of(tables.source("iec-60204-1").cite()), Standing.PUBLISHED)
            .and(Basis.of(shown.permitted()));
    String size = sizeInWords(shown.wire());
    if (exposed.isPresent()) {
      return Subject.of(FACTS, limit.mark(), supply.part())
          .violated(
              "%s has no fuse small enough for its wires".formatted(supply.part()),
              "It can deliver %s; %s wire may carry %s: %s too much."
                  .formatted(pair.value(), size, pair.limit(), pair.apart()),
              "delivers up to " + pair.value())
          .alsoAt(shown.wire().mark(), "%s, may carry %s".formatted(size, pair.limit()))
          .measured(value, held)
          .todo(
              "Put a fuse of at most %s into the plus wire at %s, or use thicker wire."
                  .formatted(pair.limit(), supply.part()),
              basis);
    }
    boolean limited = !Comparison.exceeds(delivers, shown.permitted().value());
    return subject.satisfied(
        limited
            ? "%s delivers at most %s, and its thinnest wire (%s) may carry %s."
                .formatted(supply.part(), pair.value(), size, pair.limit())
            : "%s can deliver %s; a fuse protects every wire that may not carry that, the thinnest (%s) for %s."
                .formatted(supply.part(), pair.value(), size, pair.limit()),
        value,
        held,
        basis);
  }

  /**
   * Wires that carry current of this supply: all of its circuit but dead ends of no consequence.
   */
  private static List<Conductor> fed(Circuit circuit, DirectSupply supply) {
    Set<Node> zone = circuit.reach(supply.source().to(), VoltageBands::avoidsEarth);
    return circuit.branches(Conductor.class).stream()
        .filter(VoltageBands::avoidsEarth)
        .filter(w -> zone.contains(w.from()))
        .toList();
  }

  /**
   * True if a short-circuit somewhere in this wire would be fed with more than it may carry: the
   * supply reaches it without a fuse small enough, and reaches the rest of the circuit so as well.
   * A wire that only leads to the fuse is not counted.
   */
  private static boolean isExposed(Circuit circuit, DirectSupply supply, Exposed wire) {
    Predicate<Branch> unguarded =
        b ->
            b instanceof Conductor
                || (b instanceof Contact c
                    && rating(circuit, c)
                        .map(r -> Comparison.exceeds(r, wire.permitted().value()))
                        .orElse(true));
    Set<Node> plus = circuit.reach(supply.source().to(), unguarded);
    Set<Node> minus = circuit.reach(supply.source().from(), unguarded);
    return leadsOn(circuit, supply, plus, unguarded)
        && leadsOn(circuit, supply, minus, unguarded)
        && (plus.contains(wire.wire().from()) || minus.contains(wire.wire().from()));
  }

  /** True if something other than a guarding fuse hangs on these nodes. */
  private static boolean leadsOn(
      Circuit circuit, DirectSupply supply, Set<Node> nodes, Predicate<Branch> unguarded) {
    return nodes.stream()
        .flatMap(n -> circuit.branchesAt(n).stream())
        .filter(b -> !b.equals(supply.source()) && !(b instanceof Conductor))
        .anyMatch(b -> !(b instanceof Contact) || unguarded.test(b));
  }

  /** The rating of a fuse or breaker; empty for any other contact. */
  private static Optional<Double> rating(Circuit circuit, Contact contact) {
    if (contact.actuator().kind() != Actuator.Kind.PROTECTIVE) {
      return Optional.empty();
    }
    Part part = circuit.netlist().parts().get(contact.part());
    Optional<Written<Quantity>> rating =
        part instanceof Part.Fuse fuse
            ? fuse.rating()
            : part instanceof Part.Protective device && !device.isRcd()
                ? device.rating()
                : Optional.empty();
    return rating.map(r -> r.value().high());
  }

  private static Optional<String> unratedFuse(Circuit circuit, List<Conductor> fed) {
    return circuit.branches(Contact.class).stream()
        .filter(c -> c.actuator().kind() == Actuator.Kind.PROTECTIVE)
        .filter(
            c -> fed.stream().anyMatch(w -> w.from().equals(c.from()) || w.to().equals(c.from())))
        .filter(c -> rating(circuit, c).isEmpty())
        .filter(
            c ->
                !(circuit.netlist().parts().get(c.part()) instanceof Part.Protective device
                    && device.isRcd()))
        .map(Contact::part)
        .findFirst();
  }

  private Optional<Cited<Double>> permitted(Conductor wire) {
    return wire.size().flatMap(this::permitted);
  }

  private Optional<Cited<Double>> permitted(ConductorSize size) {
    return size.awg().isPresent()
        ? tables.lookup(
            "control-wire-current-awg", Map.of("awg", "" + size.awg().getAsInt()), "amps")
        : tables.lookup("control-wire-current", Map.of(), size.mm2(), "amps");
  }

  private static String sizeInWords(Conductor wire) {
    return wire.wire()
        .size()
        .map(Written::text)
        .or(() -> wire.run().flatMap(r -> r.size()).map(Written::text))
        .or(() -> wire.size().map(Printed::of))
        .orElse("this");
  }
}
