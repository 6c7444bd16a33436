package org.coilwright.rule;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.coilwright.netlist.Netlist;
import org.coilwright.rule.Outcome.Violated;

/**
 * Puts consequences under their root cause. A finding is silenced only by one that counts for the
 * verdict and is at least as heavy, or that becomes so: otherwise silence would make a report look
 * lighter than what was found. And only by one that shares a wire, a device or a coil with it.
 */
final class Consequences {
  private final Places places;
  private final Map<Violated, Netlist.Accepted> accepted;

  private Consequences(Places places, Map<Violated, Netlist.Accepted> accepted) {
    this.places = places;
    this.accepted = accepted;
  }

  /**
   * What each root cause silences.
   *
   * @param all findings, heaviest first
   * @param accepted those that are accepted
   */
  static Map<Violated, List<Violated>> of(
      Netlist netlist, List<Violated> all, Map<Violated, Netlist.Accepted> accepted) {
    return new Consequences(new Places(netlist), accepted).among(all);
  }

  private Map<Violated, List<Violated>> among(List<Violated> all) {
    IdentityHashMap<Violated, Violated> causes = new IdentityHashMap<>();
    Map<String, List<Integer>> about = byRuleAndPart(all);
    for (Violated finding : all) {
      for (int index : candidates(finding, about)) {
        Violated cause = all.get(index);
        if (silences(cause, finding) && !leadsTo(cause, finding, causes)) {
          causes.put(finding, cause);
          break;
        }
      }
    }
    Map<Violated, List<Violated>> silenced = new LinkedHashMap<>();
    for (Violated finding : all) {
      Violated cause = causes.get(finding);
      if (cause != null) {
        silenced.computeIfAbsent(root(cause, causes), r -> new ArrayList<>()).add(finding);
      }
    }
    silenced.replaceAll((root, consequences) -> List.copyOf(consequences));
    return silenced;
  }

  /** Where in the list those of a rule stand that name a part or a pin of it. */
  private static Map<String, List<Integer>> byRuleAndPart(List<Violated> all) {
    Map<String, List<Integer>> about = new HashMap<>();
    for (int i = 0; i < all.size(); i++) {
      Violated finding = all.get(i);
      Set<String> parts = new LinkedHashSet<>();
      finding.path().forEach(place -> parts.add(Places.partOf(place)));
      for (String part : parts) {
        about.computeIfAbsent(key(finding.rule().id(), part), k -> new ArrayList<>()).add(i);
      }
    }
    return about;
  }

  private static String key(String rule, String part) {
    return rule + " " + part;
  }

  /** Those that may be its cause by their rule and by a part that both name, in their order. */
  private static Set<Integer> candidates(Violated finding, Map<String, List<Integer>> about) {
    Set<Integer> found = new TreeSet<>();
    for (String place : finding.path()) {
      String part = Places.partOf(place);
      for (List<String> rules : List.of(finding.rule().silencedBy(), finding.rule().carriedBy())) {
        for (String rule : rules) {
          found.addAll(about.getOrDefault(key(rule, part), List.of()));
        }
      }
    }
    return found;
  }

  private boolean silences(Violated cause, Violated finding) {
    boolean counts = cause.weight() == Weight.STOP || !accepted.containsKey(cause);
    return counts && (isConsequence(cause, finding) || isCarried(cause, finding));
  }

  private boolean isConsequence(Violated cause, Violated finding) {
    return cause.weight().compareTo(finding.weight()) <= 0
        && finding.rule().silencedBy().contains(cause.rule().id())
        && places.meet(cause, finding);
  }

  /** True if the finding names the very thing that the cause is about. */
  private static boolean isCarried(Violated cause, Violated finding) {
    return finding.rule().carriedBy().contains(cause.rule().id())
        && !cause.path().isEmpty()
        && finding.path().contains(cause.path().get(0));
  }

  /** A root cause weighs as much as the heaviest that follows from it. */
  static Violated asHeavyAs(Violated root, List<Violated> consequences) {
    Weight heaviest =
        consequences.stream().map(Violated::weight).min(Comparator.naturalOrder()).orElseThrow();
    return root.weight().compareTo(heaviest) <= 0 ? root : root.weighing(heaviest);
  }

  /**
   * Two rules may name each other; the chain of causes must still end at a finding that is shown.
   */
  private static boolean leadsTo(
      Violated from, Violated to, IdentityHashMap<Violated, Violated> causes) {
    return root(from, causes).equals(to);
  }

  private static Violated root(Violated finding, IdentityHashMap<Violated, Violated> causes) {
    Violated root = finding;
    for (Violated next = causes.get(root); next != null; next = causes.get(root)) {
      root = next;
    }
    return root;
  }
}
