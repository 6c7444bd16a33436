package org.coilwright.solve;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Node;
import org.coilwright.solve.FaultReach.Affected;

/**
 * Circuits on several lines that lost what they share, as a neutral, and are too many for every
 * combination. Each is then looked at in all its own positions, while the others, line by line, are
 * all off or all as they draw most. This finds the greatest voltage that any combination of
 * resistances gives: with what one line draws the common point moves along a straight line, and the
 * distance from a point to a stretch of that is greatest at an end. The least voltage may lie
 * between, so that of a load which is told to go off it may be left out that it can be just weaker.
 * Armatures of the others are taken to stay in, so that more may be found than can happen.
 */
final class LostNeutral {
  /** Kinds of company, by the potentials that circuits hang on. */
  private static final int MOST_KINDS = 4;

  private final Model whole;
  private final FaultReach reach;
  private final FaultJudge judge;

  LostNeutral(Model whole, FaultReach reach, FaultJudge judge) {
    this.whole = whole;
    this.reach = reach;
    this.judge = judge;
  }

  /** A circuit as it draws most: what of it conducts, and what is taken out of it. */
  private record Company(Group group, Set<Branch> branches, Set<Branch> closed, Set<Branch> open) {}

  /** True if a piece has more positions than are looked at together. */
  static boolean isTooLarge(Affected piece) {
    return piece.base().size() > 1
        && piece.base().stream().mapToInt(Group::independents).sum() > Exploration.MOST_CONTACTS;
  }

  /**
   * What the fault does; empty if the circuits are of too many kinds, or one by itself is too
   * large.
   */
  Optional<FaultCase> judge(Fault fault, Affected piece) {
    Map<Set<Object>, List<Company>> kinds = new LinkedHashMap<>();
    for (Group group : piece.base()) {
      for (Zone zone : group.zones) {
        if (piece.alteration().gone().stream().anyMatch(zone::holds)) {
          Optional<Company> company = company(group, zone, piece.alteration().gone());
          if (company.isEmpty()) {
            return Optional.empty();
          }
          kinds.computeIfAbsent(potentials(zone), k -> new ArrayList<>()).add(company.get());
        }
      }
    }
    if (kinds.isEmpty() || kinds.size() > MOST_KINDS) {
      return Optional.empty();
    }
    FaultCase all = new FaultCase(fault, List.of(), List.of(), Optional.empty(), true);
    for (Group group : piece.base()) {
      Map<String, LoadEffect> effects = new LinkedHashMap<>();
      for (int on = 0; on < 1 << kinds.size(); on++) {
        FaultCase one = judge(fault, piece, group, chosen(kinds, group, on));
        one.effects()
            .forEach(e -> effects.merge(e.load() + " " + e.effect(), e, LostNeutral::both));
        all =
            FaultJudge.both(
                all,
                new FaultCase(fault, List.of(), one.shorted(), Optional.empty(), one.explored()));
      }
      all =
          FaultJudge.both(
              all,
              new FaultCase(
                  fault, List.copyOf(effects.values()), List.of(), Optional.empty(), true));
    }
    return Optional.of(all);
  }

  private static List<Company> chosen(Map<Set<Object>, List<Company>> kinds, Group apart, int on) {
    List<Company> chosen = new ArrayList<>();
    int kind = 0;
    for (List<Company> some : kinds.values()) {
      if ((on >> kind++ & 1) == 1) {
        some.stream().filter(c -> c.group != apart).forEach(chosen::add);
      }
    }
    return chosen;
  }

  private FaultCase judge(Fault fault, Affected piece, Group group, List<Company> company) {
    Set<Branch> gone = new HashSet<>(piece.alteration().gone());
    Set<Branch> bridged = new HashSet<>(piece.alteration().bridged());
    Set<Branch> beside = new LinkedHashSet<>(piece.feed());
    for (Company one : company) {
      gone.addAll(one.open);
      bridged.addAll(one.closed);
      beside.addAll(one.branches);
    }
    Alteration was = piece.alteration();
    Alteration now =
        new Alteration(gone, bridged, was.joints(), was.atTop(), was.stuck(), was.drawn());
    return judge.judge(fault, reach.affected(Set.of(group), now, beside)).fault();
  }

  private static Set<Object> potentials(Zone zone) {
    Set<Object> potentials = new HashSet<>();
    for (Node node : zone.nodes) {
      if (zone.reference.isKnown(node)) {
        potentials.add(zone.reference.way(node));
      }
    }
    return potentials;
  }

  /** A circuit as it draws most through what is lost; empty if it has no load to do so. */
  private Optional<Company> company(Group group, Zone zone, Set<Branch> lost) {
    Exploration exploration = whole.explorations.get(group);
    if (exploration == null || !exploration.complete || zone.loads().isEmpty()) {
      return Optional.empty();
    }
    Map<BitSet, Double> amps = new HashMap<>();
    exploration.steady.values().stream()
        .flatMap(List::stream)
        .forEach(
            bits -> amps.put(bits, amps(group.situation(bits).flow(zone, Corner.NOMINAL), lost)));
    Optional<BitSet> heaviest =
        amps.entrySet().stream()
            .max(Comparator.comparingDouble(Map.Entry::getValue))
            .map(Map.Entry::getKey);
    return heaviest.map(
        bits -> {
          ZoneFlow flow = group.situation(bits).flow(zone, Corner.NOMINAL);
          Set<Branch> branches = new LinkedHashSet<>();
          Set<Branch> closed = new HashSet<>();
          Set<Branch> open = new HashSet<>();
          for (Element element : zone.elements) {
            branches.add(element.branch());
            boolean moves = element.kind() == Element.Kind.CONTACT && element.variable() >= 0;
            if (moves && flow.conducts().get(element.number())) {
              closed.add(element.branch());
            } else if (moves
                || element.kind() == Element.Kind.COIL
                || element.kind() == Element.Kind.INPUT) {
              open.add(element.branch());
            }
          }
          return new Company(group, branches, closed, open);
        });
  }

  private static double amps(ZoneFlow flow, Set<Branch> lost) {
    return lost.stream()
        .flatMap(b -> flow.zone().element(b).stream())
        .mapToDouble(flow::amps)
        .max()
        .orElse(0);
  }

  /** One effect in two companies: seen where either shows it, stopped by what stops both. */
  private static LoadEffect both(LoadEffect one, LoadEffect other) {
    Set<Map<String, Boolean>> positions = new LinkedHashSet<>(one.positions());
    positions.addAll(other.positions());
    return new LoadEffect(
        one.load(),
        one.effect(),
        List.copyOf(positions),
        one.stoppedBy().stream().filter(other.stoppedBy()::contains).toList(),
        one.onlyHolds() && other.onlyHolds());
  }
}
