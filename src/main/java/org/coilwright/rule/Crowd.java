package org.coilwright.rule;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.coilwright.netlist.Netlist;
import org.coilwright.rule.Outcome.Violated;

/**
 * One mistake can break many rules at once. Of findings that hang together by the parts, runs and
 * loads they name, the first few are shown and the others are told along with the first.
 */
final class Crowd {
  /** More than this above a NOTE, about parts that hang together, nobody reads. */
  private static final int SHOWN = 8;

  private Crowd() {}

  /**
   * What is told along with which finding.
   *
   * @param findings those that count, heaviest first
   */
  static Map<Violated, List<Violated>> beside(Netlist netlist, List<Violated> findings) {
    Places places = new Places(netlist);
    Map<String, List<Violated>> crowdOf = new LinkedHashMap<>();
    for (Violated finding : findings) {
      if (finding.weight() != Weight.NOTE) {
        join(crowdOf, finding, places);
      }
    }
    Map<Violated, List<Violated>> beside = new LinkedHashMap<>();
    Set<Violated> told = new HashSet<>();
    for (List<Violated> crowd : crowdOf.values()) {
      if (crowd.size() > SHOWN && told.add(crowd.get(0))) {
        Set<Violated> all = new HashSet<>(crowd);
        List<Violated> inOrder = findings.stream().filter(all::contains).toList();
        beside.put(inOrder.get(0), List.copyOf(inOrder.subList(SHOWN, inOrder.size())));
      }
    }
    return beside;
  }

  /**
   * Puts a finding to the crowd it hangs on; where it hangs on several they become one.
   *
   * @param crowdOf the crowd of each part; those of one crowd share one list
   */
  private static void join(Map<String, List<Violated>> crowdOf, Violated finding, Places places) {
    List<String> parts =
        finding.path().stream().filter(p -> !places.isMains(p)).map(Places::partOf).toList();
    List<Violated> joined = new ArrayList<>(List.of(finding));
    Set<String> theirs = new LinkedHashSet<>(parts);
    for (String part : parts) {
      List<Violated> crowd = crowdOf.get(part);
      if (crowd != null && crowd != joined && !joined.containsAll(crowd)) {
        joined.addAll(crowd);
        crowd.stream()
            .flatMap(f -> f.path().stream())
            .filter(p -> !places.isMains(p))
            .map(Places::partOf)
            .forEach(theirs::add);
      }
    }
    theirs.forEach(part -> crowdOf.put(part, joined));
  }
}
