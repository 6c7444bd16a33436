// Over 250 lines: all that a sheet takes from one report.
package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.checklist.Checklist.AcceptedEntry;
import org.coilwright.checklist.Checklist.FindingEntry;
import org.coilwright.checklist.Checklist.OpenPoint;
import org.coilwright.checklist.Checklist.SatisfiedEntry;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
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
  private final Texts texts;

  OutcomeEntries(Report report, Texts texts) {
    this.report = report;
    this.texts = texts;
  }

  List<FindingEntry> findings() {
    Set<String> taken = new HashSet<>();
    List<FindingEntry> entries = new ArrayList<>();
    for (Violated finding : report.findings()) {
      if (!finding.rule().id().equals(NOT_CHECKED)) {
        entries.add(entry(finding, Names.free(name("finding", finding), taken)));
      }
    }
    return entries;
  }

  /** By rule and place, and what is in it that others of the same rule and place are not. */
  private static String name(String kind, Outcome outcome) {
    // the number of a wire changes with every wire that is written before it
    return Names.of(
        kind,
        outcome.rule().id(),
        outcome.path().stream().filter(p -> p.indexOf(' ') < 0).toArray(String[]::new));
  }

  /** Accepted findings, in the order of the findings. */
  List<AcceptedEntry> accepted() {
    Set<String> taken = new HashSet<>();
    List<AcceptedEntry> entries = new ArrayList<>();
    for (Violated finding : report.findings()) {
      var accepted = report.accepted().get(finding);
      if (accepted != null) {
        entries.add(
            new AcceptedEntry(
                Names.free(name("accepted", finding), taken),
                finding.weight().name(),
                finding.rule().id(),
                place(finding),
                finding.headline(),
                accepted.because(),
                accepted.by(),
                report.counts(finding)));
      }
    }
    return entries;
  }

  private String place(Violated finding) {
    return texts.of("finding.place", String.join(", ", finding.at()), finding.mark().line());
  }

  private FindingEntry entry(Violated finding, String name) {
    StringBuilder detail = new StringBuilder(finding.detail());
    List<Violated> silenced = report.silenced().getOrDefault(finding, List.of());
    if (!silenced.isEmpty()) {
      sentence(
          detail,
          texts.of(
              "finding.follows",
              String.join("; ", silenced.stream().map(Violated::headline).toList())));
    }
    List<Violated> beside = report.beside().getOrDefault(finding, List.of());
    if (!beside.isEmpty()) {
      sentence(
          detail,
          texts.of(
              "finding.beside",
              String.join("; ", beside.stream().map(Violated::headline).toList())));
    }
    var accepted = report.accepted().get(finding);
    if (accepted != null) {
      sentence(detail, texts.of("finding.accepted", accepted.by(), accepted.because()));
      if (report.counts(finding)) {
        sentence(detail, texts.of("finding.still-counts"));
      }
    }
    return new FindingEntry(
        name,
        finding.weight().name(),
        finding.rule().id(),
        place(finding),
        finding.headline(),
        finding.numbers(),
        measures(finding.value(), finding.limit()).get(0),
        measures(finding.value(), finding.limit()).get(1),
        detail.toString(),
        finding.remedy(),
        Reasons.of("", finding.basis()));
  }

  private static void sentence(StringBuilder text, String more) {
    text.append(text.isEmpty() ? "" : " ").append(more);
  }

  /** One entry a rule, in the order of the rules. */
  List<SatisfiedEntry> satisfied() {
    Map<String, List<Satisfied>> byRule = new LinkedHashMap<>();
    for (Satisfied satisfied : report.satisfied()) {
      byRule.computeIfAbsent(satisfied.rule().id(), k -> new ArrayList<>()).add(satisfied);
    }
    return byRule.values().stream().map(this::group).toList();
  }

  private SatisfiedEntry group(List<Satisfied> alike) {
    Satisfied tightest =
        alike.stream().min(Comparator.comparingDouble(OutcomeEntries::room)).orElseThrow();
    Basis basis = alike.stream().map(Satisfied::basis).reduce(Basis::and).orElseThrow();
    return new SatisfiedEntry(
        Names.of("satisfied", tightest.rule().id()),
        tightest.rule().id(),
        texts.rule(tightest.rule()),
        alike.size(),
        tightest.at().isEmpty() ? texts.of("the-circuit") : String.join(", ", tightest.at()),
        measures(tightest.value(), tightest.limit()).get(0),
        measures(tightest.value(), tightest.limit()).get(1),
        Reasons.of("", basis));
  }

  /** How far a value is from its limit, as a share of the limit; what has no figures comes last. */
  private static double room(Satisfied satisfied) {
    if (satisfied.value().isEmpty() || satisfied.limit().isEmpty()) {
      return Double.MAX_VALUE;
    }
    double limit = satisfied.limit().get().number();
    double apart = Math.abs(limit - satisfied.value().get().number());
    return limit == 0 ? apart : apart / Math.abs(limit);
  }

  /** One point a missing key, then one a source that is only remembered. */
  List<OpenPoint> openPoints() {
    Set<String> taken = new HashSet<>();
    List<OpenPoint> points = new ArrayList<>();
    Map<String, Set<String>> missing = new LinkedHashMap<>();
    for (Undecided undecided : report.undecided()) {
      missing
          .computeIfAbsent(undecided.missing(), k -> new LinkedHashSet<>())
          .add(undecided.sentence());
    }
    missing.forEach(
        (key, sentences) ->
            add(
                points,
                taken,
                key,
                key,
                texts.of("point.not-checked", String.join(" ", sentences))));
    remembered()
        .forEach(
            (rule, remembered) ->
                add(
                    points,
                    taken,
                    remembered.rule(),
                    texts.of("point.limit", rule, String.join(", ", remembered.at())),
                    remembered.why(texts)));
    return points;
  }

  /** Rules that rest on memory, by what they look at. */
  private Map<String, Remembered> remembered() {
    Map<String, Remembered> byRule = new LinkedHashMap<>();
    for (Violated finding : report.findings()) {
      remember(byRule, finding.basis(), finding);
    }
    for (Satisfied satisfied : report.satisfied()) {
      remember(byRule, satisfied.basis(), satisfied);
    }
    return byRule;
  }

  /**
   * A rule that rests on memory.
   *
   * @param taken what was computed where the limit is nearest, with the limit
   */
  private record Remembered(String rule, Set<String> at, Tightest taken) {
    String why(Texts texts) {
      return texts.of("point.from-memory", taken.said);
    }
  }

  /** Of several checks the one nearest to its limit. */
  private static final class Tightest {
    private double room = Double.POSITIVE_INFINITY;
    private String said = "";

    void take(double distance, String sentence) {
      if (said.isEmpty() || distance < room) {
        room = distance;
        said = sentence;
      }
    }
  }

  private void remember(Map<String, Remembered> byRule, Basis basis, Outcome outcome) {
    if (basis.standing() == Standing.FROM_MEMORY) {
      Remembered remembered =
          byRule.computeIfAbsent(
              texts.rule(outcome.rule()) + " (" + outcome.rule().id() + ")",
              k -> new Remembered(outcome.rule().id(), new LinkedHashSet<>(), new Tightest()));
      remembered.at().add(outcome.at().isEmpty() ? texts.of("the-circuit") : outcome.at().get(0));
      if (outcome instanceof Satisfied satisfied) {
        remembered.taken().take(room(satisfied), said(satisfied));
      } else if (outcome instanceof Violated violated) {
        remembered.taken().take(Double.NEGATIVE_INFINITY, violated.numbers());
      }
    }
  }

  private String said(Satisfied satisfied) {
    List<String> measures = measures(satisfied.value(), satisfied.limit());
    return measures.get(1).isEmpty()
        ? satisfied.sentence()
        : texts.of("point.taken", measures.get(0), measures.get(1));
  }

  private static void add(
      List<OpenPoint> points, Set<String> taken, String name, String what, String why) {
    points.add(
        new OpenPoint(
            Names.free(Names.of("point", name), taken), "P" + (points.size() + 1), what, why));
  }

  private static final Map<String, Dimension> BY_UNIT =
      Map.of(
          "V", Dimension.VOLTAGE,
          "A", Dimension.CURRENT,
          "Ω", Dimension.RESISTANCE,
          "W", Dimension.POWER,
          "VA", Dimension.APPARENT_POWER,
          "s", Dimension.TIME,
          "m", Dimension.LENGTH);

  /** Value and limit as text, with as many figures as it takes to tell them apart. */
  private List<String> measures(Optional<Measure> value, Optional<Measure> limit) {
    if (value.isPresent() && limit.isPresent() && value.get().unit().equals(limit.get().unit())) {
      Dimension dimension = BY_UNIT.getOrDefault(value.get().unit(), Dimension.COUNT);
      Printed.Pair numbers = Printed.pair(value.get().number(), limit.get().number(), dimension);
      String unit = dimension == Dimension.COUNT ? " " + value.get().unit() : "";
      return List.of(texts.figure(numbers.value() + unit), texts.figure(numbers.limit() + unit));
    }
    return List.of(measure(value), measure(limit));
  }

  private String measure(Optional<Measure> measure) {
    return measure
        .map(
            m -> {
              Dimension dimension = BY_UNIT.getOrDefault(m.unit(), Dimension.COUNT);
              String number = Printed.of(m.number(), dimension);
              return texts.figure(dimension == Dimension.COUNT ? number + " " + m.unit() : number);
            })
        .orElse("");
  }
}
