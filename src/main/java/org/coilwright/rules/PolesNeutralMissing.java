package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rewiring;
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
                  + " will have it, and some get far too much; a load of two pins does not work,"
                  + " and its free end is live.")
          .remedy(
              "Run the neutral to the load, from behind the residual-current device or two-pole"
                  + " breaker that its line comes through.")
          .blind("A neutral that is wired and breaks later.")
          .sources("circuit-theory")
          .consequenceOf("poles.neutral-crossed", "poles.line-missing")
          .meansWiredOtherwise();

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
    Feeding whole = Feeding.whole(study);
    List<Outcome> outcomes = new ArrayList<>();
    for (Part load : Loads.of(circuit)) {
      PinFeeds feeds = whole.at(load.name());
      if (feeds.areMains()) {
        checkLoad(circuit, whole, load, feeds).ifPresent(outcomes::add);
      }
    }
    return outcomes;
  }

  private Optional<Outcome> checkLoad(Circuit circuit, Feeding whole, Part load, PinFeeds feeds) {
    Subject subject = Subject.of(FACTS, load.head().mark(), load.name());
    if (load.pins().contains("N")) {
      Optional<Node> pin =
          feeds.byPin().keySet().stream()
              .filter(node -> node.terminals().stream().anyMatch(t -> t.pin().equals("N")))
              .findFirst();
      return pin.map(n -> judge(circuit, whole, load, n, feeds.byPin().getOrDefault(n, Set.of())));
    }
    if (feeds.byPin().size() > 2 || feeds.all(Feeding.Kind.LINE).size() > 1) {
      return Optional.empty();
    }
    Optional<Node> free = feeds.free().stream().findFirst();
    if (free.isEmpty()) {
      return Optional.of(
          subject.satisfied("%s has its two ends on the mains.".formatted(load.name()), basis));
    }
    return switch (FreeEnd.of(circuit, load)) {
      case NEUTRAL -> Optional.of(judge(circuit, whole, load, free.get(), Set.of()));
      case LINE -> Optional.empty();
      case UNKNOWN ->
          Optional.of(
              subject.undecided(
                  "voltage of %s".formatted(load.name()),
                  "Whether the free end of %s needs the neutral or a second line cannot be told."
                      .formatted(load.name())));
    };
  }

  private Outcome judge(
      Circuit circuit, Feeding whole, Part load, Node pin, Set<Feeding.Side> reached) {
    Subject subject = Subject.of(FACTS, load.head().mark(), pin.name());
    Optional<Feeding.Side> neutral =
        reached.stream().filter(side -> side.kind() == Feeding.Kind.NEUTRAL).findFirst();
    if (neutral.isPresent()) {
      return subject.satisfied("%s reaches %s.".formatted(pin, neutral.get()), basis);
    }
    Optional<Feeding.Side> bar =
        Feeding.sides(circuit).stream()
            .filter(side -> side.kind() == Feeding.Kind.NEUTRAL)
            .findFirst();
    var finding =
        subject.violated(
            "%s has no neutral".formatted(load.name()),
            "With every contact closed, no neutral reaches %s.%s"
                .formatted(pin, WayBack.of(circuit, pin)),
            "%s reaches no neutral".formatted(pin));
    bar.ifPresent(
        side ->
            finding.alsoAt(
                Where.part(circuit, side.node().terminals().get(0).part()),
                "the neutral starts at %s".formatted(side)));
    List<String> ends = DeadEnds.of(circuit, pin);
    String to = ends.size() == 1 ? ends.get(0) : pin.toString();
    PinFeeds feeds = whole.at(load.name());
    Optional<NeutralStart> behind = NeutralStart.of(circuit, feeds, bar);
    behind
        .filter(NeutralStart::fed)
        .map(start -> start.pin().name())
        .or(() -> bar.filter(side -> behind.isEmpty()).map(Feeding.Side::toString))
        .ifPresent(
            from ->
                finding.change(
                    Rewiring.wire(
                        circuit.netlist(),
                        from,
                        to,
                        Rewiring.runOf(circuit.netlist(), to.substring(0, to.indexOf('.'))))));
    Set<String> devices = feeds.devices(circuit, load.name());
    List<String> stops = bar.map(side -> DeadEnds.of(circuit, side, devices)).orElse(List.of());
    return finding.todo(
        "Run the neutral from %s%s to %s.%s"
            .formatted(
                behind
                    .map(start -> start.pin().name())
                    .or(() -> bar.map(Feeding.Side::toString))
                    .orElse("the mains"),
                stops.isEmpty() ? "" : ", which ends at %s,".formatted(DeadEnds.listed(stops)),
                to,
                behind
                    .filter(start -> !start.fed())
                    .map(
                        start ->
                            " No neutral reaches %s yet: bring it to %s first."
                                .formatted(start.pin(), start.device()))
                    .orElse("")),
        basis);
  }
}
