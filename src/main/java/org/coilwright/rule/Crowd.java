package org.coilwright.rule;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.coilwright.netlist.Netlist;
import org.coilwright.rule.Outcome.Violated;

/**
 * One mistake can break many rules at once. Of the findings that hang together the first few are
 * shown and the others are told along with the first. Where one of them says that the circuit is
 * wired otherwise than it was meant, all hang together, since the currents and voltages of every
 * other are those of another circuit; else those that name one part, such as the load they carry.
 */
final class Crowd {
  /** Says that something does not do what was meant, but not where it is miswired. */
  private static final String UNMEANT = "wiring.intent-differs";

  /**
   * More than this above a NOTE that hang together nobody reads. Where there are others beside
   * them, one fewer is shown, as the cause may be the one that names another part.
   */
  private static final int SHOWN = 8;

  /** Before a place in the file, which is no part's name. */
  private static final String AT = "at ";

  /** Heaviest first; of one weight first what says that the wiring is another. */
  static final Comparator<Violated> ORDER =
      Comparator.comparing(Violated::weight).thenComparing(f -> !isMiswired(f));

  private final Map<Violated, List<Violated>> beside = new LinkedHashMap<>();
  private final Set<Violated> told = new LinkedHashSet<>();

  private Crowd() {}

  static boolean isMiswired(Violated finding) {
    return finding.rule().wiredOtherwise();
  }

  /**
   * What is told along with which finding.
   *
   * @param findings those that count, heaviest first
   */
  static Map<Violated, List<Violated>> beside(Netlist netlist, List<Violated> findings) {
    Places places = new Places(netlist);
    Map<Violated, Set<String>> parts = new LinkedHashMap<>();
    for (Violated finding : findings) {
      if (finding.weight() != Weight.NOTE && !finding.path().isEmpty()) {
        Set<String> named = new LinkedHashSet<>();
        finding.path().stream()
            .filter(place -> !places.isMains(place))
            .map(Places::partOf)
            .forEach(named::add);
        // what points at one place in the file, such as the air of the site, hangs together too
        finding.places().forEach(place -> named.add(AT + place.mark()));
        parts.put(finding, named);
      }
    }
    Map<String, List<Violated>> naming = new HashMap<>();
    parts.forEach(
        (f, named) -> named.forEach(p -> naming.computeIfAbsent(p, k -> new ArrayList<>()).add(f)));
    Crowd crowd = new Crowd();
    if (parts.keySet().stream().anyMatch(f -> isMiswired(f) || f.rule().id().equals(UNMEANT))) {
      crowd.limit(List.copyOf(parts.keySet()), SHOWN);
    }
    for (Violated first : parts.keySet()) {
      Set<String> own = new LinkedHashSet<>(List.of(Places.partOf(first.path().get(0))));
      own.addAll(parts.getOrDefault(first, Set.of()));
      for (String part : own) {
        if (crowd.told.contains(first)) {
          break;
        }
        List<Violated> together = new ArrayList<>(List.of(first));
        naming.getOrDefault(part, List.of()).stream()
            .filter(f -> !f.equals(first) && !crowd.told.contains(f))
            .forEach(together::add);
        boolean others = together.size() < parts.size() - crowd.told.size();
        crowd.limit(together, others ? SHOWN - 1 : SHOWN);
      }
    }
    return crowd.beside;
  }

  /**
   * Leaves the first few of a crowd; what says that the wiring is another is left before others.
   */
  private void limit(List<Violated> crowd, int shown) {
    if (crowd.size() <= shown) {
      return;
    }
    Violated first = crowd.get(0);
    List<Violated> rest = new ArrayList<>(crowd.subList(1, crowd.size()));
    rest.sort(Comparator.comparing(f -> !isMiswired(f)));
    List<Violated> along = new ArrayList<>();
    for (Violated one : rest.subList(shown - 1, rest.size())) {
      along.add(one);
      // what was told along with it is not lost with it
      along.addAll(beside.getOrDefault(one, List.of()));
      beside.remove(one);
    }
    told.addAll(along);
    List<Violated> all = new ArrayList<>(beside.getOrDefault(first, List.of()));
    all.addAll(along);
    beside.put(first, List.copyOf(all));
  }
}
