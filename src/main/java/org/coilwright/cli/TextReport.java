package org.coilwright.cli;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.NetlistText;
import org.coilwright.rule.Outcome.Satisfied;
import org.coilwright.rule.Outcome.Violated;
import org.coilwright.rule.Place;
import org.coilwright.rule.Report;
import org.coilwright.rule.Runner;
import org.coilwright.rule.Verdict;
import org.coilwright.rule.Weight;
import org.coilwright.table.Standing;

/** A report as the text a person reads. */
public final class TextReport {
  static final String CAUTION =
      "This decides nothing by itself: the local codes apply, and a licensed electrician decides"
          + " on site before anything is energised.";
  static final String CONFIRM = "confirm before relying on it";

  private static final String INDENT = "      ";

  private final Report report;
  private final Style style;
  private final StringBuilder out = new StringBuilder();
  private final Set<String> explained = new HashSet<>();

  private TextReport(Report report, Style style) {
    this.report = report;
    this.style = style;
  }

  /**
   * The whole text: every finding, what is missing, what the verdict rests on, and last, where it
   * is still on the screen, the titles of what counts and the verdict.
   */
  public static String of(Report report, Style style) {
    return new TextReport(report, style).write();
  }

  /** Only the titles of what is to stop and to fix, and the verdict. */
  static String brief(Report report, Style style) {
    TextReport text = new TextReport(report, style);
    text.titles();
    return text.out.append(VerdictLine.of(report, style)).append('\n').toString();
  }

  private String write() {
    Set<String> acceptedGaps = new HashSet<>();
    for (Violated finding : report.findings()) {
      boolean accepted = report.accepted().containsKey(finding);
      if (Runner.isGap(finding) && !accepted) {
        continue;
      } else if (Runner.isGap(finding)) {
        acceptedGaps.add(finding.headline());
      }
      finding(finding);
      out.append('\n');
    }
    MissingText.append(out, report, acceptedGaps, style);
    fromMemory();
    Lines.wrap(out, "", CAUTION, style.width());
    if (report.verdict().compareTo(Verdict.NOTE) < 0) {
      out.append('\n');
      titles();
    }
    out.append(VerdictLine.of(report, style)).append('\n');
    out.append(next()).append('\n');
    return out.toString();
  }

  /** A line for each finding that is to stop or to fix and counts. */
  private void titles() {
    for (Violated finding : report.findings()) {
      if (finding.weight() != Weight.NOTE && report.counts(finding)) {
        String word = Lines.padded(finding.weight().name(), INDENT.length());
        String place = ", line " + finding.mark().line();
        int room = style.width() - Lines.width(word) - place.length();
        String title = Lines.shortened(Lines.harmless(finding.headline()), room);
        String id = finding.rule().id();
        int gap = room - Lines.width(title) - id.length();
        out.append(painted(finding.weight(), word))
            .append(title)
            .append(style.faint(place))
            .append(gap < 2 ? "" : " ".repeat(gap) + style.faint(id))
            .append('\n');
      }
    }
  }

  private void finding(Violated finding) {
    head(finding);
    Lines.wrap(out, INDENT, finding.numbers(), style.width());
    out.append('\n');
    for (Place place : finding.places()) {
      place(place, finding.weight());
    }
    out.append('\n');
    if (!finding.detail().isBlank()) {
      Lines.wrap(out, INDENT, finding.detail(), style.width());
    }
    if (explained.add(finding.rule().id())) {
      Lines.wrap(out, INDENT + "Why:   ", finding.rule().why(), style.width());
    }
    Lines.wrap(out, INDENT + "Do:    ", finding.remedy(), style.width());
    sources(finding);
    along("also seen because of this: ", report.silenced().getOrDefault(finding, List.of()));
    along("also found: ", report.beside().getOrDefault(finding, List.of()));
    Netlist.Accepted accepted = report.accepted().get(finding);
    if (accepted != null) {
      Lines.wrap(
          out,
          INDENT,
          "Accepted by " + accepted.by() + ": " + sentence(accepted.because()),
          style.width());
      if (finding.weight() == Weight.STOP) {
        Lines.wrap(
            out,
            INDENT,
            "It counts all the same: what must not be energised cannot be accepted.",
            style.width());
      }
    }
  }

  private void along(String words, List<Violated> told) {
    if (!told.isEmpty()) {
      String seen =
          told.stream()
              .map(c -> c.headline() + " (" + c.rule().id() + ")")
              .collect(Collectors.joining("; "));
      Lines.wrap(out, INDENT, words + seen, style.width());
    }
  }

  private void head(Violated finding) {
    String word = Lines.padded(finding.weight().name(), INDENT.length());
    String mark = report.accepted().containsKey(finding) ? " (accepted)" : "";
    String headline = Lines.harmless(finding.headline()) + mark;
    String id = finding.rule().id();
    int gap = style.width() - Lines.width(word) - Lines.width(headline) - id.length();
    out.append(painted(finding.weight(), word));
    if (gap >= 2) {
      out.append(style.strong(headline)).append(" ".repeat(gap)).append(style.faint(id));
      out.append('\n');
    } else {
      String indent = "";
      for (String line : Lines.wrapped(headline, style.width() - INDENT.length())) {
        out.append(indent).append(style.strong(line)).append('\n');
        indent = INDENT;
      }
      out.append(" ".repeat(Math.max(0, style.width() - id.length())))
          .append(style.faint(id))
          .append('\n');
    }
  }

  private void place(Place place, Weight weight) {
    Mark mark = place.mark();
    NetlistText text = report.netlist().text();
    boolean here = mark.file().equals(text.file());
    if (here && mark.line() >= 1 && mark.line() <= text.lines().size()) {
      new Excerpt(style)
          .append(
              out,
              mark,
              text.lines().get(mark.line() - 1),
              place.label(),
              words -> painted(weight, words));
    } else {
      Lines.wrap(
          out,
          INDENT,
          mark.file()
              + ", line "
              + mark.line()
              + ", column "
              + mark.column()
              + ": "
              + place.label(),
          style.width());
    }
  }

  private void sources(Violated finding) {
    boolean remembered = finding.basis().standing() == Standing.FROM_MEMORY;
    List<String> sources = finding.basis().sources();
    if (sources.isEmpty() && !remembered) {
      return;
    }
    String cited = String.join("; ", sources);
    String caution = remembered ? "from memory: " + CONFIRM : "";
    String between = cited.isEmpty() || caution.isEmpty() ? "" : "; ";
    Lines.wrap(out, INDENT + "From:  ", sentence(cited + between + caution), style.width());
  }

  /** A satisfied check that rests on a remembered figure is no plain pass, so each is named. */
  private void fromMemory() {
    String named =
        report.satisfied().stream()
            .filter(s -> s.basis().standing() == Standing.FROM_MEMORY)
            .map(TextReport::subject)
            .distinct()
            .collect(Collectors.joining(", "));
    if (!named.isEmpty()) {
      Lines.wrap(
          out,
          "",
          "Satisfied, but by a figure from memory, so " + CONFIRM + ": " + named + ".",
          style.width());
      out.append('\n');
    }
  }

  private static String subject(Satisfied satisfied) {
    String at = satisfied.at().isEmpty() ? "" : " at " + satisfied.at().get(0);
    return satisfied.rule().id() + at;
  }

  private String next() {
    String file = Shell.quoted(report.netlist().text().file());
    return report.findings().stream()
        .filter(f -> report.counts(f) && f.weight() != Weight.NOTE)
        .findFirst()
        .map(f -> "Next:  coilwright explain " + f.rule().id())
        .orElse("Next:  coilwright checklist " + file + " -o checklist.pdf");
  }

  private String painted(Weight weight, String text) {
    return switch (weight) {
      case STOP -> style.bad(text);
      case FIX -> style.mend(text);
      case NOTE -> style.know(text);
    };
  }

  private static String sentence(String text) {
    String trimmed = text.strip();
    boolean ends = trimmed.endsWith(".") || trimmed.endsWith("!") || trimmed.endsWith("?");
    return ends ? trimmed : trimmed + ".";
  }
}
