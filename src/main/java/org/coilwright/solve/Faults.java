package org.coilwright.solve;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.solve.FaultReach.Affected;

/**
 * One thing broken at a time: what every load then does in every position, what still stops it, and
 * whether mains reaches an extra-low-voltage circuit. Only the groups that a fault touches are
 * solved again.
 */
public final class Faults {
  private final Circuit circuit;
  private final Model whole;
  private final Earth earth;
  private final Map<Node, List<Zone>> zonesAt = new HashMap<>();
  private final FaultReach reach;
  private final Starved starved;
  private final Crossings crossings;
  private final List<FaultCase> cases = new ArrayList<>();

  /**
   * A fault that brings mains to an extra-low-voltage circuit.
   *
   * @param crossing where it arrives, and how much of it
   */
  public record Crossed(Fault fault, Crossing crossing) {}

  private Faults(Study study) {
    this.circuit = study.circuit();
    this.whole = study.model();
    this.earth = Earth.of(circuit);
    for (Zone zone : whole.grid.zones) {
      for (Node node : zone.nodes) {
        zonesAt.computeIfAbsent(node, k -> new ArrayList<>()).add(zone);
      }
    }
    this.reach = new FaultReach(circuit, whole, earth);
    this.starved = new Starved(whole);
    this.crossings = new Crossings(circuit, zonesAt, whole);
  }

  /**
   * What was judged of a study so far, by its place among all that can break: rules ask for some
   * kinds, the checklist for all.
   */
  private record Judged(Map<Integer, FaultCase> cases) {}

  private Faults breaking(Set<Fault.Kind> kinds, Map<Integer, FaultCase> judged) {
    List<Breakage> breakages = Breakages.of(circuit, earth);
    for (int i = 0; i < breakages.size(); i++) {
      if (kinds.contains(breakages.get(i).fault().kind())) {
        FaultCase known = judged.get(i);
        if (known == null) {
          known = judge(breakages.get(i));
          judged.put(i, known);
        }
        cases.add(known);
      }
    }
    return this;
  }

  /** Breaks everything in a circuit, one thing at a time. */
  public static Faults of(Study study) {
    return of(study, EnumSet.allOf(Fault.Kind.class));
  }

  /** Breaks what can break in these ways, one thing at a time. */
  public static Faults of(Study study, Set<Fault.Kind> kinds) {
    Judged judged = study.derived(Judged.class, s -> new Judged(new ConcurrentHashMap<>()));
    return new Faults(study).breaking(kinds, judged.cases());
  }

  /**
   * The faults that bring mains to an extra-low-voltage circuit, in the order of the netlist. What
   * the loads then do is not looked at, so that nothing is solved again.
   */
  public static List<Crossed> crossing(Study study) {
    Faults faults = new Faults(study);
    List<Crossed> found = new ArrayList<>();
    for (Breakage breakage : Breakages.of(faults.circuit, faults.earth)) {
      breakage.ways().stream()
          .flatMap(way -> faults.crossing(way).stream())
          .max(Comparator.comparingDouble(Crossing::volts))
          .ifPresent(crossing -> found.add(new Crossed(breakage.fault(), crossing)));
    }
    return List.copyOf(found);
  }

  /** Every fault, in the order of the netlist. */
  public List<FaultCase> cases() {
    return List.copyOf(cases);
  }

  /** Faults that behave alike taken together, the most harmful first. */
  public List<FaultClass> classes() {
    Map<Outcome, List<FaultCase>> alike = new LinkedHashMap<>();
    for (FaultCase one : cases) {
      Outcome outcome = new Outcome(one.effects(), one.shorted(), one.crossing(), one.explored());
      alike.computeIfAbsent(outcome, k -> new ArrayList<>()).add(one);
    }
    return alike.values().stream()
        .map(same -> new FaultClass(same.stream().map(FaultCase::fault).toList(), same.get(0)))
        .sorted(Comparator.comparing(c -> c.like().harm()))
        .toList();
  }

  /** What two faults share if they behave alike. */
  private record Outcome(
      List<LoadEffect> effects,
      List<String> shorted,
      Optional<Crossing> crossing,
      boolean explored) {}

  private FaultCase judge(Breakage breakage) {
    FaultCase worst = judge(breakage.fault(), breakage.ways().get(0));
    for (Alteration way : breakage.ways().subList(1, breakage.ways().size())) {
      worst = FaultJudge.worse(worst, judge(breakage.fault(), way));
    }
    return worst;
  }

  private FaultCase judge(Fault fault, Alteration way) {
    if (way.isNone()) {
      return new FaultCase(fault, List.of(), List.of(), Optional.empty(), true);
    }
    FaultCase all = new FaultCase(fault, List.of(), List.of(), crossing(way), true);
    List<Affected> pieces = reach.of(way);
    Set<Group> touched = new LinkedHashSet<>();
    pieces.forEach(piece -> touched.addAll(piece.base()));
    for (Affected piece : pieces) {
      all = FaultJudge.both(all, judge(fault, piece, touched));
    }
    return all;
  }

  private FaultCase judge(Fault fault, Affected piece, Set<Group> touched) {
    FaultJudge judge = new FaultJudge(circuit, whole);
    if (LostNeutral.isTooLarge(piece)) {
      Optional<FaultCase> apart = new LostNeutral(whole, reach, judge).judge(fault, piece);
      if (apart.isPresent()) {
        return apart.get();
      }
    }
    FaultJudge.Judged own = judge.judge(fault, piece);
    Alteration way = piece.alteration();
    if (own.broken().filter(Model::isDelicate).isPresent()) {
      Set<Group> more = reach.withNeighbours(piece.base());
      own = judge.judge(fault, reach.affected(more, way, piece.feed()));
    }
    FaultCase all = own.fault();
    for (Group other : own.broken().map(b -> starved.by(b, touched)).orElse(Set.of())) {
      Set<Group> both = piece.with(Set.of(other));
      Alteration drawing = way.drawing(starved.drawnBeside(both));
      FaultJudge.Judged more = judge.judge(fault, reach.affected(both, drawing, piece.feed()));
      all = Starved.with(all, other, more.fault());
    }
    return all;
  }

  private Optional<Crossing> crossing(Alteration way) {
    return way.joints().stream().flatMap(joint -> crossings.of(joint).stream()).findFirst();
  }
}
