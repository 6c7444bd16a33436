package org.coilwright.rules;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Coil;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.CurrentKind;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Quantity;

/**
 * What feeds a coil, by the wiring alone: the answer is the same when a wrong part across the coil
 * shorts it.
 *
 * @param first nodes that wires and contacts, in any position, join to its first pin
 * @param second likewise its second pin
 */
record FedCoil(Circuit circuit, Coil coil, Set<Node> first, Set<Node> second) {
  static FedCoil of(Circuit circuit, Coil coil) {
    return new FedCoil(
        circuit,
        coil,
        circuit.reach(coil.from(), FedCoil::joins),
        circuit.reach(coil.to(), FedCoil::joins));
  }

  private static boolean joins(Branch branch) {
    return branch instanceof Branch.Conductor || branch instanceof Branch.Contact;
  }

  /**
   * Sources that its two pins reach with opposite poles; of the mains also those of two lines it
   * lies between.
   */
  List<Source> sources() {
    return circuit.branches(Source.class).stream()
        .filter(s -> drives(s, first, second) || drives(s, second, first))
        .toList();
  }

  private boolean drives(Source source, Set<Node> one, Set<Node> other) {
    return one.contains(source.to())
        && (other.contains(source.from())
            || circuit.branches(Source.class).stream()
                .anyMatch(
                    s ->
                        !source.isDirect()
                            && !s.isDirect()
                            && !s.equals(source)
                            && other.contains(s.to())));
  }

  /** The direct source that feeds it; empty if none does, or an alternating one does. */
  Optional<Source> direct() {
    List<Source> sources = sources();
    return sources.stream().allMatch(Source::isDirect)
        ? sources.stream().findFirst()
        : Optional.empty();
  }

  /** The key that would tell the voltage of the source that feeds it. */
  String voltageKey() {
    return sources().stream()
        .filter(Source::isDirect)
        .findFirst()
        .map(s -> DirectSupply.keyOf(circuit, s) + ".voltage of " + s.part())
        .orElse("site.mains.voltage");
  }

  /** The kind of current that feeds it; where nothing does, the kind of coil it is. */
  CurrentKind kind() {
    List<Source> sources = sources();
    if (sources.isEmpty()) {
      return coil.spec().voltage().value().kind();
    }
    return sources.stream().allMatch(Source::isDirect) ? CurrentKind.DC : CurrentKind.AC;
  }

  /** The end that gets plus; empty if contacts can turn the polarity, or nothing feeds it. */
  Optional<Node> plusEnd() {
    boolean firstPlus = sources().stream().anyMatch(s -> first.contains(s.to()));
    boolean secondPlus = sources().stream().anyMatch(s -> second.contains(s.to()));
    if (firstPlus == secondPlus) {
      return sources().stream()
          .filter(s -> first.contains(s.from()) != second.contains(s.from()))
          .map(s -> first.contains(s.from()) ? coil.to() : coil.from())
          .findFirst();
    }
    return Optional.of(firstPlus ? coil.from() : coil.to());
  }

  /** The far end. */
  Node otherThan(Node end) {
    return end.equals(coil.from()) ? coil.to() : coil.from();
  }

  /** True if a contact lies between the coil and each source, so that it can be turned off. */
  boolean isSwitched() {
    Set<Node> a = circuit.net(coil.from());
    Set<Node> b = circuit.net(coil.to());
    return sources().stream()
        .noneMatch(
            s ->
                (a.contains(s.from()) && b.contains(s.to()))
                    || (a.contains(s.to()) && b.contains(s.from())));
  }

  /** What the coil resists while it is on, tolerance included if written; empty if unknown. */
  Optional<Quantity> ohms() {
    if (coil.spec().resistance().isPresent()) {
      return coil.spec().resistance().map(Written::value);
    }
    double rated = coil.spec().voltage().value().nominal();
    return coil.spec()
        .power()
        .or(() -> coil.spec().hold())
        .or(() -> coil.spec().pickUp())
        .map(Written::value)
        .filter(p -> p.low() > 0)
        .map(
            p ->
                new Quantity(
                    Dimension.RESISTANCE,
                    rated * rated / p.high(),
                    rated * rated / p.nominal(),
                    rated * rated / p.low(),
                    CurrentKind.UNSTATED));
  }

  /** The current it can draw at most: highest supply, least resistance; empty if unknown. */
  OptionalDouble mostAmps() {
    Optional<Quantity> volts = direct().flatMap(Source::volts);
    Optional<Quantity> ohms = ohms();
    if (volts.isEmpty() || ohms.isEmpty() || ohms.get().low() <= 0) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(volts.get().high() / ohms.get().low());
  }
}
