package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.checklist.Checklist.FindingEntry;
import org.coilwright.checklist.Checklist.OpenPoint;
import org.coilwright.checklist.Checklist.SatisfiedEntry;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Figures;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome.Satisfied;
import org.coilwright.rule.Outcome.Undecided;
import org.coilwright.rule.Outcome.Violated;
import org.coilwright.rule.Report;
import org.coilwright.table.Standing;

/** What the rules said, as entries of a checklist. */
final class OutcomeEntries {
  /** Its findings become points to settle; they are not printed twice. */
  private static final String NOT_CHECKED = "record.not-checked";

  private final Report report;

  OutcomeEntries(Report report) {
    this.report = report;
  }

  List<FindingEntry> findings() {
    List<FindingEntry> entries = new ArrayList<>();
    for (Violated finding : report.findings()) {
      if (!finding.rule().id().equals(NOT_CHECKED)) {
        entries.add(entry(finding));
      }
    }
    return entries;
  }

  private FindingEntry entry(Violated finding) {
    StringBuilder detail = new StringBuilder(finding.detail());
    List<Violated> silenced = report.silenced().getOrDefault(finding, List.of());
    if (!silenced.isEmpty()) {
      sentence(
          detail,
          "Follows from it, and is not listed on its own: "
              + String.join("; ", silenced.stream().map(Violated::headline).toList())
              + ".");
    }
    var accepted = report.accepted().get(finding);
    if (accepted != null) {
      sentence(
          detail,
          "Accepted by "
              + accepted.by()
              + ": "
              + accepted.because()
              + (report.counts(finding) ? " It still counts: a STOP cannot be accepted." : ""));
    }
    return new FindingEntry(
        finding.weight().name(),
        finding.rule().id(),
        String.join(", ", finding.at()) + ", line " + finding.mark().line(),
        finding.headline(),
        finding.numbers(),
        measure(finding.value()),
        measure(finding.limit()),
        detail.toString(),
        finding.remedy(),
        Reasons.of("", finding.basis()));
  }

  private static void sentence(StringBuilder text, String more) {
    text.append(text.isEmpty() ? "" : " ").append(more);
  }

  List<SatisfiedEntry> satisfied() {
    return report.satisfied().stream()
        .map(
            s ->
                new SatisfiedEntry(
                    s.rule().id(),
                    String.join(", ", s.at()),
                    s.sentence(),
                    measure(s.value()),
                    measure(s.limit()),
                    Reasons.of("", s.basis())))
        .toList();
  }

  /** One point a missing key, then one a source that is only remembered. */
  List<OpenPoint> openPoints() {
    List<OpenPoint> points = new ArrayList<>();
    Map<String, Set<String>> missing = new LinkedHashMap<>();
    for (Undecided undecided : report.undecided()) {
      missing
          .computeIfAbsent(undecided.missing(), k -> new LinkedHashSet<>())
          .add(undecided.sentence());
    }
    missing.forEach(
        (key, sentences) -> add(points, key, "Not checked: " + String.join(" ", sentences)));
    remembered()
        .forEach(
            (source, rules) ->
                add(
                    points,
                    source,
                    "From memory: "
                        + Grounds.CONFIRM
                        + ". Used by "
                        + String.join(", ", rules)
                        + "."));
    return points;
  }

  private Map<String, Set<String>> remembered() {
    Map<String, Set<String>> rules = new LinkedHashMap<>();
    for (Violated finding : report.findings()) {
      remember(rules, finding.basis(), finding.rule().id(), finding.at());
    }
    for (Satisfied satisfied : report.satisfied()) {
      remember(rules, satisfied.basis(), satisfied.rule().id(), satisfied.at());
    }
    return rules;
  }

  private static void remember(
      Map<String, Set<String>> rules, Basis basis, String rule, List<String> at) {
    if (basis.standing() == Standing.FROM_MEMORY) {
      rules
          .computeIfAbsent(String.join("; ", basis.sources()), k -> new LinkedHashSet<>())
          .add(rule + " at " + (at.isEmpty() ? "the circuit" : at.get(0)));
    }
  }

  private static void add(List<OpenPoint> points, String what, String why) {
    points.add(new OpenPoint("P" + (points.size() + 1), what, why));
  }

  private static String measure(Optional<Measure> measure) {
    return measure.map(m -> number(m.number()) + " " + m.unit()).orElse("").strip();
  }

  private static String number(double number) {
    return Figures.computed(number, Dimension.COUNT);
  }
}
