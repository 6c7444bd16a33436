package org.coilwright.rule;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.netlist.KeyGuide;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Netlist;
import org.coilwright.rule.Outcome.Satisfied;
import org.coilwright.rule.Outcome.Undecided;
import org.coilwright.rule.Outcome.Violated;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;

/** Asks every rule about a study and sorts the answers into a {@link Report}. */
public final class Runner {
  /** Last words of keys whose value an instrument shows, or the eye. */
  private static final Set<String> MEASURED =
      Set.of(
          "length",
          "size",
          "resistance",
          "power",
          "current",
          "voltage",
          "inrush",
          "loop-impedance",
          "fault-current",
          "frequency",
          "ambient",
          "enclosure-air");

  /** The finding below rests on no figure, so it cites none. */
  private static final Basis NO_FIGURE = new Basis(List.of(), Standing.PUBLISHED);

  /** The rule that a gap is raised for. */
  public static final String NOT_CHECKED = "record.not-checked";

  private static final String GAP = "not checked for want of ";

  private final List<Rule> rules;
  private final RuleFacts notChecked;
  private final RuleFacts acceptedNothing;

  /**
   * A runner for an ordered list of rules.
   *
   * @param notChecked facts of {@code record.not-checked}, raised here for what a rule left
   *     undecided
   * @param acceptedNothing facts of {@code record.accepted-nothing}, raised here because only the
   *     whole list of findings can tell
   */
  public Runner(List<Rule> rules, RuleFacts notChecked, RuleFacts acceptedNothing) {
    this.rules = List.copyOf(rules);
    this.notChecked = notChecked;
    this.acceptedNothing = acceptedNothing;
  }

  /** Runs every rule. Pure: the same study gives the same report. */
  public Report run(Study study) {
    List<Outcome> outcomes = new ArrayList<>();
    for (Rule rule : rules) {
      outcomes.addAll(rule.check(study));
    }
    return assemble(study.circuit().netlist(), outcomes);
  }

  /** Sorts outcomes, however they came about, into a report. */
  Report assemble(Netlist netlist, List<Outcome> outcomes) {
    List<Satisfied> satisfied = new ArrayList<>();
    List<Undecided> undecided = new ArrayList<>();
    Set<Violated> violated = new LinkedHashSet<>();
    for (Outcome outcome : outcomes) {
      if (outcome instanceof Satisfied s) {
        satisfied.add(s);
      } else if (outcome instanceof Undecided u) {
        undecided.add(u);
      } else if (outcome instanceof Violated v) {
        violated.add(v);
      }
    }
    violated.addAll(missingKeys(netlist, undecided));

    Map<Violated, Netlist.Accepted> accepted = new LinkedHashMap<>();
    Acceptance acceptance = new Acceptance(netlist, ruleIds(), acceptedNothing);
    Map<String, List<Violated>> byRule = new HashMap<>();
    violated.forEach(v -> byRule.computeIfAbsent(v.rule().id(), id -> new ArrayList<>()).add(v));
    for (Netlist.Accepted entry : netlist.accepted()) {
      List<Violated> matched =
          byRule.getOrDefault(entry.rule().value(), List.of()).stream()
              .filter(v -> acceptance.covers(entry, v))
              .toList();
      matched.forEach(v -> accepted.putIfAbsent(v, entry));
      if (matched.isEmpty()) {
        Violated note = acceptance.ofNothing(entry, violated);
        violated.add(note);
        byRule.computeIfAbsent(note.rule().id(), id -> new ArrayList<>()).add(note);
      }
    }

    Set<String> wanting = new HashSet<>();
    violated.forEach(v -> wanting.add(subject(v)));
    satisfied.removeIf(s -> wanting.contains(subject(s)));

    Comparator<Violated> order = heaviestFirst(netlist.text().file());
    List<Violated> all = new ArrayList<>(violated);
    all.sort(order);
    Map<Violated, List<Violated>> silenced = new LinkedHashMap<>();
    Map<Violated, List<Violated>> follow = Consequences.of(netlist, all, accepted);
    Set<Violated> consequences = new HashSet<>();
    follow.values().forEach(consequences::addAll);
    List<Violated> findings = new ArrayList<>();
    for (Violated finding : all) {
      List<Violated> own = follow.get(finding);
      if (!consequences.contains(finding)) {
        findings.add(own == null ? finding : Consequences.asHeavyAs(finding, own));
      }
    }
    follow.forEach((root, own) -> silenced.put(Consequences.asHeavyAs(root, own), own));
    findings.sort(order);
    Map<Violated, List<Violated>> beside =
        Crowd.beside(
            netlist,
            findings.stream()
                .filter(f -> f.weight() == Weight.STOP || !accepted.containsKey(f))
                .toList());
    Set<Violated> along = new HashSet<>();
    beside.values().forEach(along::addAll);
    findings.removeIf(along::contains);
    return new Report(
        netlist,
        List.copyOf(findings),
        List.copyOf(satisfied),
        List.copyOf(undecided),
        Collections.unmodifiableMap(silenced),
        Collections.unmodifiableMap(beside),
        Collections.unmodifiableMap(accepted));
  }

  private Set<String> ruleIds() {
    Set<String> ids = new LinkedHashSet<>(List.of(notChecked.id(), acceptedNothing.id()));
    rules.forEach(rule -> ids.add(rule.facts().id()));
    return ids;
  }

  /**
   * Rule and subject. A subject that one check of a rule finds wanting is not satisfied by another
   * of its checks: whoever looks for it must find one answer.
   */
  private static String subject(Outcome outcome) {
    return outcome.rule().id() + " " + (outcome.path().isEmpty() ? "" : outcome.path().get(0));
  }

  private static Comparator<Violated> heaviestFirst(String mainFile) {
    Comparator<Mark> inFileOrder =
        Comparator.comparing((Mark m) -> !m.file().equals(mainFile))
            .thenComparing(Mark::file)
            .thenComparingInt(Mark::line)
            .thenComparingInt(Mark::column);
    return Crowd.ORDER.thenComparing(Violated::mark, inFileOrder);
  }

  /** One note for each missing key, however many checks wait for it. */
  private List<Violated> missingKeys(Netlist netlist, List<Undecided> undecided) {
    Map<String, List<Undecided>> byKey = new LinkedHashMap<>();
    for (Undecided u : undecided) {
      byKey.computeIfAbsent(u.missing(), k -> new ArrayList<>()).add(u);
    }
    List<Violated> notes = new ArrayList<>();
    byKey.forEach((missing, waiting) -> notes.add(missingKey(netlist, missing, waiting)));
    return notes;
  }

  /** True for the note that something is missing. */
  public static boolean isGap(Violated finding) {
    return finding.rule().id().equals(NOT_CHECKED);
  }

  /** The title of the note that something is missing. */
  public static String gap(String missing) {
    return GAP + missing;
  }

  private static String howToWrite(Netlist netlist, String missing) {
    return KeyGuide.of(netlist, missing)
        .map(
            key ->
                "Write "
                    + missing
                    + ", for instance "
                    + key.example()
                    + (isMeasured(missing)
                        ? ", and check again, or measure it on site."
                        : ", from the data sheet or the drawing, and check again."))
        .orElse("No single key settles this: find out on site before it is energised.");
  }

  private Violated missingKey(Netlist netlist, String missing, List<Undecided> waiting) {
    Set<String> at = new LinkedHashSet<>();
    Set<String> ids = new LinkedHashSet<>();
    Set<String> sentences = new LinkedHashSet<>();
    for (Undecided u : waiting) {
      at.addAll(u.path());
      ids.add(u.rule().id());
      sentences.add(u.sentence());
    }
    return new Violated(
        notChecked,
        Weight.NOTE,
        List.copyOf(at),
        gap(missing),
        String.join(" ", sentences),
        List.of(new Place(waiting.get(0).mark(), "gives no " + missing)),
        "Waiting for it: " + String.join(", ", ids) + ".",
        waiting.stream()
            .map(Undecided::settledBy)
            .filter(by -> !by.isEmpty())
            .findFirst()
            .orElseGet(() -> howToWrite(netlist, missing)),
        Optional.empty(),
        Optional.empty(),
        NO_FIGURE);
  }

  /** True if a meter or a rule shows it on site; a rating or a limit only its maker can give. */
  private static boolean isMeasured(String missing) {
    String key = missing.contains(" of ") ? missing.substring(0, missing.indexOf(" of ")) : missing;
    boolean nameplate = missing.contains("rating") || key.equals("coil.voltage");
    return !nameplate && MEASURED.contains(key.substring(key.lastIndexOf('.') + 1));
  }
}
