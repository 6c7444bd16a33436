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
import org.coilwright.netlist.Run;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/**
 * The wires of a direct-voltage supply's circuit, and the fuses between it and them.
 *
 * @param wires all but the protective conductor
 */
record ControlWires(Circuit circuit, DirectSupply supply, Tables tables, List<Conductor> wires) {
  /**
   * What a wire may carry.
   *
   * @param size as written
   * @param how at which air temperature, in words
   */
  record Permit(Conductor wire, double amps, String size, String how, List<Cited<Double>> from) {}

  static ControlWires of(Circuit circuit, DirectSupply supply, Tables tables) {
    Set<Node> zone = circuit.reach(supply.source().to(), VoltageBands::avoidsEarth);
    return new ControlWires(
        circuit,
        supply,
        tables,
        circuit.islandOf(supply.source().to()).branches().stream()
            .filter(Conductor.class::isInstance)
            .map(Conductor.class::cast)
            .filter(VoltageBands::avoidsEarth)
            .filter(w -> zone.contains(w.from()))
            .toList());
  }

  /** The first wire of which no table says what it may carry. */
  Optional<Conductor> withoutPermit() {
    return wires.stream().filter(w -> permit(w).isEmpty()).findFirst();
  }

  /** The key that would tell a wire's size. */
  static String missingSize(Conductor wire) {
    String of = wire.run().map(Run::name).orElse("%s to %s".formatted(wire.from(), wire.to()));
    return (wire.size().isEmpty() ? "size of " : "tabulated size of ") + of;
  }

  /** Thinnest first, of equally thin ones the longest first. */
  List<Permit> thinnestFirst() {
    return wires.stream()
        .flatMap(w -> permit(w).stream())
        .sorted(
            Comparator.comparingDouble(Permit::amps)
                .thenComparing(p -> -p.wire().length().orElse(0)))
        .toList();
  }

  private Optional<Permit> permit(Conductor wire) {
    double air =
        circuit
            .airAround()
            .map(Quantity::high)
            .orElseGet(() -> tables.figure("coil.air-hottest").value());
    return wire.size()
        .flatMap(
            size ->
                atThirtyDegrees(size)
                    .flatMap(
                        amps ->
                            factor(size, air)
                                .map(factor -> permit(wire, size, amps, factor, air))));
  }

  private static Permit permit(
      Conductor wire, ConductorSize size, Cited<Double> amps, Cited<Double> factor, double air) {
    String written =
        wire.wire()
            .size()
            .or(() -> wire.run().flatMap(Run::size))
            .map(Written::text)
            .orElseGet(() -> Printed.of(size));
    // cooler air than the table's gains nothing: it may be warmer one summer
    if (factor.value() >= 1) {
      return new Permit(
          wire,
          amps.value(),
          written,
          "Permitted current as tabulated for air at 30 °C",
          List.of(amps));
    }
    return new Permit(
        wire,
        amps.value() * factor.value(),
        written,
        "%s as tabulated for air at 30 °C, times %s for air at %s"
            .formatted(
                Printed.amps(amps.value()),
                Printed.of(factor.value(), Dimension.COUNT),
                Printed.of(air, Dimension.TEMPERATURE)),
        List.of(amps, factor));
  }

  private Optional<Cited<Double>> atThirtyDegrees(ConductorSize size) {
    return size.awg().isPresent()
        ? tables.lookup(
            "control-wire-current-awg",
            Map.of("awg", Integer.toString(size.awg().getAsInt())),
            "amps")
        : tables.lookup("control-wire-current", Map.of(), size.mm2(), "amps");
  }

  /** For the least heat-proof insulation there is: what a control wire has is not written. */
  private Optional<Cited<Double>> factor(ConductorSize size, double air) {
    return size.awg().isPresent()
        ? tables.lookup("ambient-air-nec", Map.of(), air, "c60")
        : tables.lookup("ambient-air-iec", Map.of(), air, "pvc");
  }

  /**
   * True if a short-circuit somewhere in this wire would be fed with more than it may carry: the
   * supply reaches it without a fuse small enough, and reaches the rest of the circuit so as well.
   * A wire that only leads to the fuse is not counted.
   */
  boolean isExposed(Permit permit) {
    Predicate<Branch> unguarded = b -> b instanceof Conductor || isUnguarded(b, permit.amps());
    Set<Node> plus = circuit.reach(supply.source().to(), unguarded);
    Set<Node> minus = circuit.reach(supply.source().from(), unguarded);
    Node at = permit.wire().from();
    return leadsOn(plus, unguarded)
        && leadsOn(minus, unguarded)
        && (plus.contains(at) || minus.contains(at));
  }

  /** True for a contact that is no fuse, or one that lets more than {@code amps} through. */
  private boolean isUnguarded(Branch branch, double amps) {
    return branch instanceof Contact contact
        && rating(contact).map(r -> Comparison.exceeds(r, amps)).orElse(true);
  }

  /** True if something other than a guarding fuse hangs on these nodes. */
  private boolean leadsOn(Set<Node> nodes, Predicate<Branch> unguarded) {
    return nodes.stream()
        .flatMap(n -> circuit.branchesAt(n).stream())
        .filter(b -> !b.equals(supply.source()) && !(b instanceof Conductor))
        .anyMatch(b -> !(b instanceof Contact) || unguarded.test(b));
  }

  /** Fuses in the circuit that let more through than a wire may carry. */
  List<Contact> tooLargeFor(Permit permit) {
    return fuses().stream().filter(f -> isUnguarded(f, permit.amps())).toList();
  }

  /** The first fuse in the circuit whose rating is not written. */
  Optional<String> unratedFuse() {
    return fuses().stream().filter(f -> rating(f).isEmpty()).map(Contact::part).findFirst();
  }

  private List<Contact> fuses() {
    List<Contact> fuses = new ArrayList<>();
    for (Conductor wire : wires) {
      for (Node end : List.of(wire.from(), wire.to())) {
        circuit.branchesAt(end).stream()
            .filter(Contact.class::isInstance)
            .map(Contact.class::cast)
            .filter(c -> isFuse(c) && !fuses.contains(c))
            .forEach(fuses::add);
      }
    }
    return fuses;
  }

  private boolean isFuse(Contact contact) {
    return contact.actuator().kind() == Actuator.Kind.PROTECTIVE
        && !(circuit.netlist().parts().get(contact.part()) instanceof Part.Protective device
            && device.isRcd());
  }

  /** The rating of a fuse or breaker; empty for any other contact. */
  private Optional<Double> rating(Contact contact) {
    if (!isFuse(contact)) {
      return Optional.empty();
    }
    Part part = circuit.netlist().parts().get(contact.part());
    Optional<Written<Quantity>> rating =
        part instanceof Part.Fuse fuse
            ? fuse.rating()
            : part instanceof Part.Protective breaker ? breaker.rating() : Optional.empty();
    return rating.map(r -> r.value().high());
  }
}
