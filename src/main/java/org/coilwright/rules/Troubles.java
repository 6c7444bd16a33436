package org.coilwright.rules;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.coilwright.netlist.Part;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.solve.Study;
import org.coilwright.solve.Trouble;

/** What the rules about switching states share: one finding a fault, and what stayed unexplored. */
final class Troubles {
  private Troubles() {}

  /** {@code With U1.heat closed} and in how many more positions; for the start of a sentence. */
  static String with(Study study, List<? extends Trouble> alike) {
    String first = Positions.of(study, alike.get(0).positions());
    int more = alike.size() - 1;
    String others =
        more == 0 ? "" : " (and in %s more position%s)".formatted(more, more == 1 ? "" : "s");
    return (alike.get(0).positions().isEmpty() ? "As wired" : "With " + first) + others;
  }

  /** The troubles of one kind, those that are the same fault in several positions together. */
  static <T extends Trouble> Collection<List<T>> alike(
      Study study, Class<T> kind, Function<? super T, ?> fault) {
    Map<Object, List<T>> groups = new LinkedHashMap<>();
    for (Trouble trouble : study.troubles()) {
      if (kind.isInstance(trouble)) {
        T found = kind.cast(trouble);
        groups.computeIfAbsent(fault.apply(found), key -> new ArrayList<>()).add(found);
      }
    }
    return groups.values();
  }

  /** True if some position shows a trouble of this kind, at rest or before it comes to rest. */
  static boolean any(Study study, Class<? extends Trouble> kind) {
    return study.troubles().stream().anyMatch(kind::isInstance);
  }

  /** What would decide a question that a gap keeps open. */
  static String missing(Trouble.Gap gap) {
    if (!(gap instanceof Trouble.NotExplored group)) {
      return "a settled current through " + String.join(", ", gap.names());
    }
    List<String> contacts = group.contacts();
    List<String> shown = contacts.subList(0, Math.min(2, contacts.size()));
    int more = contacts.size() - shown.size();
    return "%s %s%s"
        .formatted(
            group.orders() ? "operate-time and release-time of" : "a smaller group than",
            String.join(", ", shown),
            more == 0 ? "" : " and %s more".formatted(more));
  }

  /** Why positions, or what is read in them, were left out; for the middle of a sentence. */
  static String reason(Trouble.Gap gap) {
    if (!(gap instanceof Trouble.NotExplored group)) {
      return "which of %s conduct cannot be settled".formatted(String.join(", ", gap.names()));
    }
    return (group.orders()
            ? "which of %s relays is faster decides, and at most %s steps of them are followed"
            : "%s contacts act on one another and at most %s are explored")
        .formatted(group.contacts().size(), group.limit());
  }

  /** What would decide a question about a load that a short-circuit hides in every position. */
  static String unshorted(Part load) {
    return "positions of %s without a short-circuit".formatted(load.name());
  }

  /** One undecided outcome for each group of contacts that has too many positions to visit. */
  static List<Outcome> unexplored(RuleFacts rule, Study study) {
    List<Outcome> outcomes = new ArrayList<>();
    for (Trouble trouble : study.troubles()) {
      if (trouble instanceof Trouble.NotSolved gap) {
        outcomes.add(
            Subject.ofCircuit(rule, study.circuit().netlist())
                .undecided(
                    missing(gap),
                    "Which of %s conduct cannot be settled, so what lies beside them was left out."
                        .formatted(String.join(", ", gap.diodes()))));
      } else if (trouble instanceof Trouble.NotExplored group) {
        String contacts = String.join(", ", group.contacts());
        outcomes.add(
            Subject.ofCircuit(rule, study.circuit().netlist())
                .undecided(
                    missing(group),
                    group.orders()
                        ? "Which of %s is faster decides, and there are more orders than are followed; this group was left out."
                            .formatted(contacts)
                        : "%s independent contacts act on one another (%s); every position is visited for"
                                .formatted(group.contacts().size(), contacts)
                            + " groups of up to %s, and this one was left out."
                                .formatted(group.limit())));
      }
    }
    return outcomes;
  }
}
