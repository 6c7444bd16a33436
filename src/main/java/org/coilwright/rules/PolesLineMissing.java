package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A pin of a load that needs a line gets none. */
final class PolesLineMissing implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("poles.line-missing", Weight.STOP, "load without one of its lines")
          .what(
              "Looks at each load that the mains reach: with every contact closed, a line must"
                  + " reach each of its pins but N and PE; of two pins, the one that is not on the"
                  + " neutral, or both if it is made for the voltage between two lines.")
          .why(
              "What is left shares the voltage as its elements will have it, a motor hums and"
                  + " burns, and a load that stays cold looks switched off while it is live.")
          .remedy("Run the line to the pin.")
          .blind("A line that is wired and breaks later.")
          .sources("circuit-theory")
          .consequenceOf("poles.neutral-crossed", "wiring.self-joined")
          .meansWiredOtherwise();

  private final Basis basis;

  PolesLineMissing(Tables tables) {
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
        checkLoad(circuit, load, feeds).ifPresent(outcomes::add);
      }
    }
    return outcomes;
  }

  private Optional<Outcome> checkLoad(Circuit circuit, Part load, PinFeeds feeds) {
    List<Node> free =
        feeds.byPin().keySet().stream()
            .filter(pin -> !isNeutral(pin) && !isOn(feeds, pin, Feeding.Kind.LINE))
            .toList();
    boolean two = load.pins().stream().filter(p -> !p.equals("PE")).count() == 2;
    Subject subject = Subject.of(FACTS, load.head().mark(), load.name());
    if (!two) {
      return Optional.of(
          free.isEmpty()
              ? subject.satisfied(
                  "A line reaches each of the pins of %s that need one.".formatted(load.name()),
                  basis)
              : missing(circuit, load, feeds, free.get(0)));
    }
    if (free.isEmpty() || (free.size() == 1 && isOn(feeds, free.get(0), Feeding.Kind.NEUTRAL))) {
      return Optional.of(subject.satisfied("A line reaches %s.".formatted(load.name()), basis));
    }
    if (free.size() == 2) {
      return free.stream()
          .filter(pin -> !isOn(feeds, pin, Feeding.Kind.NEUTRAL))
          .findFirst()
          .or(() -> Optional.of(free.get(0)))
          .map(pin -> missing(circuit, load, feeds, pin));
    }
    return switch (FreeEnd.of(circuit, load)) {
      case LINE -> Optional.of(missing(circuit, load, feeds, free.get(0)));
      // a line is there: what is missing is the neutral, and another rule says so
      case NEUTRAL ->
          Optional.of(subject.satisfied("A line reaches %s.".formatted(load.name()), basis));
      case UNKNOWN ->
          Optional.of(
              subject.undecided(
                  "voltage of %s".formatted(load.name()),
                  "Whether the free end of %s needs the neutral or a second line cannot be told."
                      .formatted(load.name())));
    };
  }

  private static boolean isNeutral(Node pin) {
    return pin.terminals().stream().anyMatch(t -> t.pin().equals("N"));
  }

  private static boolean isOn(PinFeeds feeds, Node pin, Feeding.Kind kind) {
    return feeds.byPin().getOrDefault(pin, Set.of()).stream().anyMatch(s -> s.kind() == kind);
  }

  private Outcome missing(Circuit circuit, Part load, PinFeeds feeds, Node pin) {
    List<String> ends = DeadEnds.of(circuit, pin);
    Set<Feeding.Side> used = feeds.all(Feeding.Kind.LINE);
    Optional<Feeding.Side> line =
        Feeding.sides(circuit).stream()
            .filter(side -> side.kind() == Feeding.Kind.LINE && !used.contains(side))
            .findFirst();
    List<String> at = new ArrayList<>(List.of(pin.name()));
    at.addAll(ends);
    List<String> stops = line.map(side -> stops(circuit, load, feeds, side)).orElse(List.of());
    at.addAll(stops);
    boolean onNeutral = isOn(feeds, pin, Feeding.Kind.NEUTRAL);
    Subject.Finding finding =
        new Subject(FACTS, load.head().mark(), at)
            .violated(
                "no line reaches %s".formatted(pin),
                "With every contact closed, %s reaches %s; on %s there is %s.%s"
                    .formatted(
                        onNeutral ? "only the neutral" : "no line",
                        pin,
                        load.name(),
                        rest(feeds),
                        WayBack.of(circuit, pin)),
                "%s is on no line".formatted(pin));
    line.ifPresent(
        side ->
            finding.alsoAt(
                Where.part(circuit, side.node().terminals().get(0).part()),
                "%s does not get there".formatted(side)));
    return finding.todo(
        "Bring %s%s to %s."
            .formatted(
                line.map(Feeding.Side::toString).orElse("a line"),
                stops.isEmpty() ? "" : ", which ends at %s,".formatted(DeadEnds.listed(stops)),
                pin),
        basis);
  }

  /** Where the line itself stops short: at a device of this load, or the only such place. */
  private static List<String> stops(Circuit circuit, Part load, PinFeeds feeds, Feeding.Side line) {
    List<String> here = DeadEnds.of(circuit, line, feeds.devices(circuit, load.name()));
    List<String> all = DeadEnds.of(circuit, line.node());
    return here.isEmpty() && all.size() == 1 ? all : here;
  }

  /** What reaches its other pins, in words. */
  private static String rest(PinFeeds feeds) {
    String there =
        feeds.byPin().values().stream()
            .flatMap(Set::stream)
            .map(Feeding.Side::toString)
            .distinct()
            .sorted()
            .collect(Collectors.joining(", "));
    return "only " + there;
  }
}
