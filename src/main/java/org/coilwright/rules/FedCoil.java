package org.coilwright.rules;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.circuit.Branch.Coil;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.CurrentKind;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Quantity;

/**
 * What feeds a coil, by the wiring alone: the answer is the same when a wrong part across the coil
 * shorts it.
 *
 * @param ways what wires and contacts join, with the resistors in the coil's way where only these
 *     lead to a source
 * @param sources those that its two pins reach with opposite poles, through wires and contacts in
 *     any position; of the mains also those of two lines it lies between
 */
record FedCoil(CoilWiring wiring, Nets ways, Coil coil, List<Source> sources) {
  /** The direct source that feeds it; empty if none does, or an alternating one does. */
  Optional<Source> direct() {
    return sources.stream().allMatch(Source::isDirect)
        ? sources.stream().findFirst()
        : Optional.empty();
  }

  /** The key that would tell the voltage of the source that feeds it. */
  String voltageKey() {
    return sources.stream()
        .filter(Source::isDirect)
        .findFirst()
        .map(s -> DirectSupply.keyOf(wiring.circuit(), s) + ".voltage of " + s.part())
        .orElse("site.mains.voltage");
  }

  /** The kind of current that feeds it; where nothing does, the kind of coil it is. */
  CurrentKind kind() {
    if (sources.isEmpty()) {
      return coil.spec().voltage().value().kind();
    }
    return sources.stream().allMatch(Source::isDirect) ? CurrentKind.DC : CurrentKind.AC;
  }

  /** The end that gets plus; empty if contacts can turn the polarity, or nothing feeds it. */
  Optional<Node> plusEnd() {
    boolean firstPlus = sources.stream().anyMatch(s -> reaches(coil.from(), s.to()));
    boolean secondPlus = sources.stream().anyMatch(s -> reaches(coil.to(), s.to()));
    if (firstPlus == secondPlus) {
      return sources.stream()
          .filter(s -> reaches(coil.from(), s.from()) != reaches(coil.to(), s.from()))
          .map(s -> reaches(coil.from(), s.from()) ? coil.to() : coil.from())
          .findFirst();
    }
    return Optional.of(firstPlus ? coil.from() : coil.to());
  }

  private boolean reaches(Node one, Node other) {
    return ways.joined(one, other);
  }

  /** The far end. */
  Node otherThan(Node end) {
    return end.equals(coil.from()) ? coil.to() : coil.from();
  }

  /** True if a contact lies between the coil and each source, so that it can be turned off. */
  boolean isSwitched() {
    Nets.Pair ends = wiring.wires().ends(coil);
    return sources.stream().noneMatch(s -> wiring.wires().ends(s).equals(ends));
  }

  /**
   * What the coil resists while it is on, with the usual tolerance if none is written; empty if the
   * netlist does not tell.
   */
  Optional<Quantity> ohms() {
    return written()
        .map(
            r ->
                r.isExact()
                    ? new Quantity(
                        r.dimension(),
                        r.nominal() * (1 - wiring.tolerance()),
                        r.nominal(),
                        r.nominal() * (1 + wiring.tolerance()),
                        r.kind())
                    : r);
  }

  private Optional<Quantity> written() {
    if (coil.spec().resistance().isPresent()) {
      return coil.spec().resistance().map(Written::value).filter(r -> r.low() > 0);
    }
    double rated = coil.spec().voltage().value().nominal();
    return coil.spec()
        .power()
        .or(() -> coil.spec().hold())
        .or(() -> coil.spec().pickUp())
        .map(Written::value)
        .filter(p -> p.low() > 0)
        .map(p -> p.dividing(rated * rated, Dimension.RESISTANCE));
  }

  /** The current it can draw at most: highest supply, least resistance; empty if unknown. */
  OptionalDouble mostAmps() {
    Optional<Quantity> volts = direct().flatMap(Source::volts);
    Optional<Quantity> ohms = ohms();
    if (volts.isEmpty() || ohms.isEmpty()) {
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(volts.get().high() / ohms.get().low());
  }
}
