package org.coilwright.rule;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.NearNames;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Wire;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Words;
import org.coilwright.rule.Outcome.Violated;
import org.coilwright.table.Standing;

/**
 * Which findings the entries under {@code accepted} cover.
 *
 * @param numbered by the number written on it where a wire stands in the list, from 1
 */
record Acceptance(
    Netlist netlist,
    Collection<String> rules,
    RuleFacts nothing,
    Map<String, List<Integer>> numbered) {
  /** As many places as a reader can choose from. */
  private static final int MOST_PLACES = 6;

  private static final String WIRE = "wire ";

  /** What findings are about that are about no part. */
  private static final Set<String> NO_PART = Set.of("circuit", "site", "switching");

  Acceptance(Netlist netlist, Collection<String> rules, RuleFacts nothing) {
    this(netlist, rules, nothing, new HashMap<>());
    for (int i = 0; i < netlist.wires().size(); i++) {
      int place = i + 1;
      netlist
          .wires()
          .get(i)
          .number()
          .ifPresent(n -> numbered.computeIfAbsent(n.value(), k -> new ArrayList<>()).add(place));
    }
  }

  /**
   * An entry covers a finding of its rule if its {@code at} is the finding's subject or the part
   * the subject belongs to, a pin that the finding names, or a wire that it names or stands at: by
   * its place in the list, {@code wire 3}, or by its number. A mere designation covers only the
   * subject: accepting {@code K1} must not hide what is said about K2 and only touches K1.
   */
  boolean covers(Netlist.Accepted entry, Violated finding) {
    if (!finding.rule().id().equals(entry.rule().value()) || finding.path().isEmpty()) {
      return false;
    }
    String at = entry.at().value();
    String subject = finding.path().get(0);
    return subject.equals(at)
        || Places.partOf(subject).equals(at)
        || (at.indexOf('.') > 0 && finding.path().contains(at))
        || wires(at).anyMatch(wire -> isAt(wire, finding));
  }

  /** Counts in {@code wires}, from 1, of the wire so named. */
  private Stream<Integer> wires(String at) {
    Set<Integer> places = new TreeSet<>(numbered.getOrDefault(at, List.of()));
    if (at.startsWith(WIRE)) {
      String place = at.substring(WIRE.length());
      if (place.matches("[1-9][0-9]{0,8}") && Integer.parseInt(place) <= netlist.wires().size()) {
        places.add(Integer.parseInt(place));
      }
    }
    return places.stream();
  }

  private static String id(int wire) {
    return WIRE + wire;
  }

  private boolean isAt(int number, Violated finding) {
    Wire wire = netlist.wires().get(number - 1);
    Stream<Mark> own =
        Stream.of(
                Optional.of(wire.mark()),
                Optional.of(wire.from().mark()),
                Optional.of(wire.to().mark()),
                wire.size().map(Written::mark),
                wire.insulation().map(Written::mark))
            .flatMap(Optional::stream);
    return finding.path().contains(id(number)) || own.anyMatch(finding.mark()::equals);
  }

  /** That an entry covers nothing, and what it could have covered. */
  Violated ofNothing(Netlist.Accepted entry, Collection<Violated> findings) {
    String rule = entry.rule().value();
    String at = entry.at().value();
    Set<String> elsewhere = new LinkedHashSet<>();
    findings.stream()
        .filter(v -> v.rule().id().equals(rule) && !v.path().isEmpty())
        .forEach(v -> elsewhere.add(v.path().get(0)));
    return new Violated(
        nothing,
        Weight.NOTE,
        List.of(at),
        "nothing to accept for " + rule + " at " + at,
        why(rule, elsewhere) + (isKnown(at) ? "" : " Nothing here is called " + at + "."),
        List.of(
            new Place(entry.rule().mark(), "this rule"), new Place(entry.at().mark(), "at this")),
        "",
        whatToDo(rule, elsewhere),
        Optional.empty(),
        Optional.empty(),
        new Basis(List.of(), Standing.PUBLISHED));
  }

  private String why(String rule, Set<String> elsewhere) {
    if (!elsewhere.isEmpty()) {
      return "%s was raised, but only at %s.".formatted(rule, list(elsewhere));
    }
    return rules.contains(rule)
        ? "No finding of %s was raised at all.".formatted(rule)
        : "There is no rule %s.".formatted(rule);
  }

  private String whatToDo(String rule, Set<String> elsewhere) {
    if (!elsewhere.isEmpty()) {
      return "Write `at: %s`, or strike the entry out.".formatted(elsewhere.iterator().next());
    }
    List<String> near = rules.contains(rule) ? List.of() : NearNames.nearest(rule, rules);
    return near.isEmpty()
        ? "Strike the entry out, or correct its rule or its place."
        : "Write `rule: %s`, or strike the entry out.".formatted(near.get(0));
  }

  private static String list(Set<String> places) {
    String first = Words.all(places.stream().limit(MOST_PLACES).toList());
    return places.size() > MOST_PLACES
        ? "%s and %s more".formatted(first, places.size() - MOST_PLACES)
        : first;
  }

  /** A part, a pin of it, a run, a wire, or a name that is no place of the wiring. */
  private boolean isKnown(String at) {
    return netlist.parts().containsKey(Places.partOf(at))
        || netlist.runs().containsKey(at)
        || wires(at).findAny().isPresent()
        || NO_PART.contains(at);
  }
}
