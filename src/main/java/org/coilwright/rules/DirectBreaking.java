package org.coilwright.rules;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.ShortestWays;
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
import org.coilwright.sizing.PowerSide;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/**
 * Whether a fuse or breaker breaks what the direct-voltage outputs before it can give. An arc on
 * direct current has no zero to go out at: what a device breaks on the mains says nothing here.
 */
final class DirectBreaking {
  private final Tables tables;

  DirectBreaking(Tables tables) {
    this.tables = tables;
  }

  /**
   * The outcome; empty for a device that no direct-voltage output reaches, and for one of which
   * nothing is written where the outputs limit their current.
   *
   * @param ways from both poles of each output, as far as they have been looked for
   */
  Optional<Outcome> judge(
      Circuit circuit, Part device, Map<Source, List<ShortestWays>> ways, RuleFacts facts) {
    List<Source> sources =
        circuit.branches(Source.class).stream()
            .filter(Source::isDirect)
            .filter(
                s ->
                    ProtectionBreakingCapacity.wayTo(
                            circuit, device, ways.computeIfAbsent(s, o -> waysFrom(circuit, o)))
                        .isPresent())
            .toList();
    boolean silent =
        device instanceof Part.Fuse fuse
            ? fuse.breakingCapacity().isEmpty()
            : ((Part.Protective) device).breakingCapacity().isEmpty();
    boolean limited = sources.stream().allMatch(s -> s.limitAmps().isPresent());
    return sources.isEmpty() || (silent && limited && written(device).isEmpty())
        ? Optional.empty()
        : Optional.of(judge(sources, device, facts));
  }

  private static List<ShortestWays> waysFrom(Circuit circuit, Source output) {
    return Stream.of(output.to(), output.from())
        .map(pole -> circuit.waysFrom(pole, PowerSide::isWay))
        .toList();
  }

  private static Optional<Written<Quantity>> written(Part device) {
    return device instanceof Part.Fuse fuse
        ? fuse.breakingDirect()
        : ((Part.Protective) device).breakingDirect();
  }

  private Outcome judge(List<Source> sources, Part device, RuleFacts facts) {
    Subject subject = Subject.of(facts, device.head().mark(), device.name());
    Optional<Written<Quantity>> breaks = written(device);
    if (breaks.isEmpty()) {
      return subject.undecided(
          "breaking-capacity-dc of " + device.name(),
          "Whether %s breaks a short-circuit on direct current is open: what it breaks there is not written."
              .formatted(device.name()));
    }
    Optional<Source> unlimited = sources.stream().filter(s -> s.limitAmps().isEmpty()).findFirst();
    if (unlimited.isPresent()) {
      Source source = unlimited.get();
      return subject.undecided(
          "%s.limit of %s"
              .formatted(source.id().substring(source.part().length() + 1), source.part()),
          "Whether %s breaks a short-circuit is open: what %s can give is not written."
              .formatted(device.name(), source.part()));
    }
    double gives = sources.stream().mapToDouble(s -> s.limitAmps().orElse(0)).sum();
    double has = breaks.get().value().low();
    Printed.Pair pair = Printed.pair(gives, has, Dimension.CURRENT);
    Measure value = new Measure(gives, "A");
    Measure limit = new Measure(has, "A");
    Basis basis = new Basis(List.of(tables.source("part-data").cite()), Standing.PUBLISHED);
    if (!Comparison.exceeds(gives, has)) {
      return subject.satisfied(
          "%s breaks %s on direct current, and its supply gives %s at most."
              .formatted(device.name(), pair.limit(), pair.value()),
          value,
          limit,
          basis);
    }
    return subject
        .violated(
            "%s cannot break a short-circuit on direct current".formatted(device.name()),
            "At it up to %s can flow; it breaks %s there: short by %s."
                .formatted(pair.value(), pair.limit(), pair.apart()),
            "in the way of " + pair.value())
        .alsoAt(breaks.get().mark(), "breaks " + pair.limit())
        .alsoAt(
            sources.get(0).mark(), "gives " + Printed.amps(sources.get(0).limitAmps().orElse(0)))
        .measured(value, limit)
        .change(breaks.get().mark(), Printed.atLeast(gives, Dimension.CURRENT))
        .todo(
            "Take a device that breaks %s or more on direct current."
                .formatted(Printed.atLeast(gives, Dimension.CURRENT)),
            basis);
  }
}
