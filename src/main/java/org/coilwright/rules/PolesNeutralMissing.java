package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.coilwright.circuit.Branch.LoadElement;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.quantity.Quantity;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** The load needs a neutral and has none. */
final class PolesNeutralMissing implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("poles.neutral-missing", Weight.STOP, "load without neutral")
          .what(
              "Looks at each mains load with a pin N, and at each load of two pins that is made for"
                  + " the voltage from line to neutral: with every contact closed, the neutral must"
                  + " reach it.")
          .why(
              "Without the neutral the elements of a star share the voltage as their resistances"
                  + " will have it, and some get far too much; a load of two pins does not work, and"
                  + " its free end is live.")
          .remedy("Run the neutral to the load.")
          .blind("A neutral that is wired and breaks later.")
          .sources("circuit-theory");

  private final Basis basis;

  PolesNeutralMissing(Tables tables) {
    basis = Basis.of(FACTS, tables, Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    Circuit circuit = study.circuit();
    List<Outcome> outcomes = new ArrayList<>();
    for (Part load : Loads.of(circuit)) {
      PinFeeds feeds = PinFeeds.of(circuit, load.name(), branch -> true);
      if (feeds.areMains()) {
        checkLoad(circuit, load, feeds).ifPresent(outcomes::add);
      }
    }
    return outcomes;
  }

  private Optional<Outcome> checkLoad(Circuit circuit, Part load, PinFeeds feeds) {
    Subject subject = Subject.of(FACTS, load.head().mark(), load.name());
    if (load.pins().contains("N")) {
      Optional<Node> pin =
          feeds.byPin().keySet().stream()
              .filter(node -> node.terminals().stream().anyMatch(t -> t.pin().equals("N")))
              .findFirst();
      return pin.map(n -> judge(circuit, load, n, feeds.byPin().getOrDefault(n, Set.of())));
    }
    if (feeds.byPin().size() > 2 || feeds.all(PinFeeds.Kind.LINE).size() > 1) {
      return Optional.empty();
    }
    Optional<Node> free =
        feeds.byPin().entrySet().stream()
            .filter(entry -> entry.getValue().isEmpty())
            .map(java.util.Map.Entry::getKey)
            .findFirst();
    if (free.isEmpty()) {
      return Optional.of(
          subject.satisfied("%s has its two ends on the mains.".formatted(load.name()), basis));
    }
    return switch (wanted(circuit, load)) {
      case NEUTRAL -> Optional.of(judge(circuit, load, free.get(), Set.of()));
      case LINE -> Optional.empty();
      case UNKNOWN ->
          Optional.of(
              subject.undecided(
                  "voltage of %s".formatted(load.name()),
                  "Whether the free end of %s needs the neutral or a second line cannot be told."
                      .formatted(load.name())));
    };
  }

  private enum Wanted {
    NEUTRAL,
    LINE,
    UNKNOWN
  }

  /**
   * What a free end is made for: the one of the two mains voltages that the rating is closer to.
   */
  private static Wanted wanted(Circuit circuit, Part load) {
    List<Source> lines =
        circuit.branches(Source.class).stream().filter(source -> !source.isDirect()).toList();
    if (lines.size() == 1) {
      return Wanted.NEUTRAL;
    }
    Optional<Double> rated =
        circuit.branchesOf(load.name()).stream()
            .filter(LoadElement.class::isInstance)
            .map(LoadElement.class::cast)
            .filter(element -> element.ratedVolts().isPresent())
            .map(element -> element.ratedVolts().getAsDouble())
            .findFirst();
    Optional<Double> toNeutral = lines.stream().flatMap(l -> volts(l).stream()).findFirst();
    Optional<Double> toLine = lineToLine(lines.get(0), lines.get(1));
    if (rated.isEmpty() || toNeutral.isEmpty() || toLine.isEmpty()) {
      return Wanted.UNKNOWN;
    }
    double apart = Math.abs(rated.get() - toNeutral.get());
    double apartFromLines = Math.abs(rated.get() - toLine.get());
    return apart < apartFromLines ? Wanted.NEUTRAL : Wanted.LINE;
  }

  private static Optional<Double> volts(Source line) {
    return line.volts().map(Quantity::nominal);
  }

  private static Optional<Double> lineToLine(Source one, Source other) {
    return volts(one)
        .flatMap(
            a -> volts(other).map(b -> distance(a, one.phaseDegrees(), b, other.phaseDegrees())));
  }

  /** Between the tips of two pointers. */
  private static double distance(double a, OptionalInt angleOfA, double b, OptionalInt angleOfB) {
    double alpha = Math.toRadians(angleOfA.orElse(0));
    double beta = Math.toRadians(angleOfB.orElse(0));
    return Math.hypot(
        a * Math.cos(alpha) - b * Math.cos(beta), a * Math.sin(alpha) - b * Math.sin(beta));
  }

  private Outcome judge(Circuit circuit, Part load, Node pin, Set<PinFeeds.Side> reached) {
    Subject subject = Subject.of(FACTS, load.head().mark(), pin.name());
    Optional<PinFeeds.Side> neutral =
        reached.stream().filter(side -> side.kind() == PinFeeds.Kind.NEUTRAL).findFirst();
    if (neutral.isPresent()) {
      return subject.satisfied("%s reaches %s.".formatted(pin, neutral.get()), basis);
    }
    Optional<PinFeeds.Side> bar =
        PinFeeds.sides(circuit).stream()
            .filter(side -> side.kind() == PinFeeds.Kind.NEUTRAL)
            .findFirst();
    var finding =
        subject.violated(
            "%s has no neutral".formatted(load.name()),
            "With every contact closed, no neutral reaches %s.".formatted(pin),
            "%s reaches no neutral".formatted(pin));
    bar.ifPresent(
        side ->
            finding.alsoAt(
                Where.part(circuit, side.node().terminals().get(0).part()),
                "the neutral starts at %s".formatted(side)));
    return finding.todo(
        "Run the neutral from %s to %s."
            .formatted(bar.map(PinFeeds.Side::toString).orElse("the mains"), pin),
        basis);
  }
}
