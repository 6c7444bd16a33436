package org.coilwright.rule;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.coilwright.netlist.Netlist;
import org.coilwright.rule.Outcome.Violated;

/**
 * One mistake can break many rules at once. Of the findings that name one part, which the heaviest
 * of them is about, the first few are shown and the others are told along with that one.
 */
final class Crowd {
  /** More than this above a NOTE, with one part in all of them, nobody reads. */
  private static final int SHOWN = 8;

  private Crowd() {}

  /**
   * What is told along with which finding.
   *
   * @param findings those that count, heaviest first
   */
  static Map<Violated, List<Violated>> beside(Netlist netlist, List<Violated> findings) {
    Places places = new Places(netlist);
    Map<String, List<Violated>> naming = new HashMap<>();
    for (Violated finding : findings) {
      if (finding.weight() != Weight.NOTE) {
        finding.path().stream()
            .filter(place -> !places.isMains(place))
            .map(Places::partOf)
            .distinct()
            .forEach(part -> naming.computeIfAbsent(part, p -> new ArrayList<>()).add(finding));
      }
    }
    Map<Violated, List<Violated>> beside = new LinkedHashMap<>();
    Set<Violated> told = new HashSet<>();
    for (Violated first : findings) {
      if (first.weight() != Weight.NOTE && !first.path().isEmpty() && !told.contains(first)) {
        String part = Places.partOf(first.path().get(0));
        List<Violated> shown =
            naming.getOrDefault(part, List.of()).stream().filter(f -> !told.contains(f)).toList();
        if (shown.size() > SHOWN) {
          List<Violated> rest = new ArrayList<>(shown);
          rest.remove(first);
          List<Violated> along = new ArrayList<>();
          for (Violated one : rest.subList(SHOWN - 1, rest.size())) {
            along.add(one);
            // what was told along with it is not lost with it
            along.addAll(beside.getOrDefault(one, List.of()));
            beside.remove(one);
          }
          told.addAll(along);
          beside.put(first, List.copyOf(along));
        }
      }
    }
    return beside;
  }
}
