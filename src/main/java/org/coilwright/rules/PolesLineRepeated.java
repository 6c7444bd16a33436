package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.rules.Feeding.Kind;
import org.coilwright.solve.State;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** Two pins of a load hang on the same line. */
final class PolesLineRepeated implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("poles.line-repeated", Weight.STOP, "two pins on the same line")
          .what(
              "Looks which line each pin of a mains load hangs on when its contacts are closed, and"
                  + " raises two pins on one. A star with neutral on a mains of one line is meant"
                  + " to be so and is left alone.")
          .why(
              "Between two pins on one line there is no voltage: part of the load stays cold, the"
                  + " rest loads one line with the current of two, and a motor does not start.")
          .remedy("Give each pin its own line.")
          .blind("The order of the lines, which decides which way a motor turns.")
          .sources("circuit-theory")
          .consequenceOf("wiring.self-joined", "wiring.short-circuit")
          .meansWiredOtherwise();

  private final Basis basis;

  PolesLineRepeated(Tables tables) {
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
    long lines = circuit.branches(Source.class).stream().filter(s -> !s.isDirect()).count();
    for (Part load : Loads.of(circuit)) {
      PinFeeds feeds = whole.at(load.name());
      if (lines == 1 && load.pins().contains("N")) {
        outcomes.add(
            Subject.of(FACTS, load.head().mark(), load.name())
                .satisfied(
                    "%s is a star with neutral on the one line there is.".formatted(load.name()),
                    basis));
      } else if (!feeds.all(Kind.LINE).isEmpty()) {
        outcomes.add(
            repeated(feeds).isPresent() && feeds.areAmbiguous()
                ? inEachState(study, load)
                : judge(study, load, repeated(feeds)));
      }
    }
    return outcomes;
  }

  private Outcome inEachState(Study study, Part load) {
    List<State> states =
        study.statesFor(load.name()).stream().filter(state -> !study.isShorted(state)).toList();
    if (states.isEmpty()) {
      return Subject.of(FACTS, load.head().mark(), load.name())
          .undecided(
              Troubles.unshorted(load),
              "A short-circuit hides which lines %s hangs on in every position."
                  .formatted(load.name()));
    }
    for (State state : states) {
      Optional<Twice> twice = repeated(Feeding.in(study, state).at(load.name()));
      if (twice.isPresent()) {
        return judge(study, load, twice);
      }
    }
    return judge(study, load, Optional.empty());
  }

  /** Two pins and the line that both hang on. */
  private record Twice(Node one, Node other, Feeding.Side line) {}

  private static Optional<Twice> repeated(PinFeeds feeds) {
    Map<Feeding.Side, Node> first = new LinkedHashMap<>();
    for (Map.Entry<Node, Set<Feeding.Side>> pin : feeds.byPin().entrySet()) {
      for (Feeding.Side side : pin.getValue()) {
        Node earlier = first.putIfAbsent(side, pin.getKey());
        if (side.kind() == Kind.LINE && earlier != null) {
          return Optional.of(new Twice(earlier, pin.getKey(), side));
        }
      }
    }
    return Optional.empty();
  }

  private Outcome judge(Study study, Part load, Optional<Twice> found) {
    Circuit circuit = study.circuit();
    if (found.isEmpty()) {
      return Subject.of(FACTS, load.head().mark(), load.name())
          .satisfied("No two pins of %s hang on the same line.".formatted(load.name()), basis);
    }
    Twice twice = found.get();
    List<Path> ways =
        Stream.of(twice.other(), twice.one())
            .flatMap(pin -> circuit.path(twice.line().node(), pin, Feeding::isWay).stream())
            .toList();
    List<String> at = new ArrayList<>(List.of(twice.other().name(), twice.one().name()));
    // one of these ways is the mistake
    ways.forEach(way -> way.nodes().forEach(node -> at.add(node.name())));
    Optional<Node> parting = Parting.of(ways);
    String parts = WayBack.both(circuit, twice.line().node(), twice.one(), twice.other());
    var finding =
        new Subject(FACTS, load.head().mark(), at.stream().distinct().toList())
            .violated(
                "%s and %s hang on the same line".formatted(twice.one(), twice.other()),
                "With the contacts closed, %s reaches both pins of %s: no voltage between them.%s"
                    .formatted(twice.line(), load.name(), parts),
                "two pins on %s".formatted(twice.line()));
    parting.ifPresent(
        node ->
            Parting.after(node, ways)
                .forEach(b -> finding.alsoAt(b.mark(), "leaves %s".formatted(node))));
    for (Node pin : List.of(twice.one(), twice.other())) {
      circuit.wiresAt(pin.terminals().get(0)).stream()
          .findFirst()
          .ifPresent(wire -> finding.alsoAt(wire.mark(), "brings %s".formatted(twice.line())));
    }
    return finding.todo(cure(study, load, twice), basis);
  }

  /** From where the line comes that does not get there, if that can be told. */
  private static String cure(Study study, Part load, Twice twice) {
    Circuit circuit = study.circuit();
    PinFeeds feeds = Feeding.whole(study).at(load.name());
    Set<Feeding.Side> used = feeds.all(Kind.LINE);
    Set<String> devices = feeds.devices(circuit, load.name());
    for (Feeding.Side line : Feeding.sides(circuit)) {
      List<String> stops =
          line.kind() == Kind.LINE && !used.contains(line)
              ? DeadEnds.of(circuit, line, devices)
              : List.of();
      if (!stops.isEmpty()) {
        return "Bring %s, which ends at %s, to the one of %s and %s that it belongs to, in place of %s."
            .formatted(line, DeadEnds.listed(stops), twice.one(), twice.other(), twice.line());
      }
    }
    return "Move the wire that leads to %s, here or at the device before it, to a line of its own."
        .formatted(twice.other());
  }
}
