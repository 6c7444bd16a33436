package org.coilwright.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.netlist.KeyGuide;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Part;
import org.coilwright.rule.Outcome.Undecided;
import org.coilwright.rule.Report;
import org.coilwright.rule.Runner;

/**
 * What is missing from a netlist, as a list to go and look it up by: a part after the other, each
 * key as it may be written, with the rules that wait for it.
 */
final class MissingText {
  private static final String INDENT = "      ";
  private static final String BAR = INDENT + "| ";

  private final Netlist netlist;
  private final Style style;

  /** By heading; the lines of the netlist to be, each with the rules that wait for it. */
  private final Map<String, Map<String, Set<String>>> lines = new LinkedHashMap<>();

  /** What no key holds, with what was to be said about it. */
  private final Map<String, String> unwritable = new LinkedHashMap<>();

  private final Set<String> missing = new LinkedHashSet<>();

  private MissingText(Netlist netlist, Style style) {
    this.netlist = netlist;
    this.style = style;
  }

  /**
   * Appends the list; nothing if nothing is missing.
   *
   * @param accepted titles of what somebody has accepted to be missing, which stands elsewhere
   */
  static void append(StringBuilder out, Report report, Set<String> accepted, Style style) {
    MissingText text = new MissingText(report.netlist(), style);
    List<Undecided> waiting =
        report.undecided().stream()
            .filter(u -> !accepted.contains(Runner.gap(u.missing())))
            .toList();
    waiting.forEach(text::add);
    if (!waiting.isEmpty()) {
      text.write(out, waiting.size());
    }
  }

  private void add(Undecided undecided) {
    missing.add(undecided.missing());
    Optional<KeyGuide> guide =
        KeyGuide.of(netlist, undecided.missing()).filter(g -> undecided.settledBy().isEmpty());
    if (guide.isEmpty()) {
      unwritable.merge(
          undecided.missing(),
          (undecided.sentence() + " " + undecided.settledBy()).strip(),
          (known, more) -> known.contains(more) ? known : known + " " + more);
      return;
    }
    lines
        .computeIfAbsent(heading(guide.get()), h -> new LinkedHashMap<>())
        .computeIfAbsent(guide.get().example(), e -> new LinkedHashSet<>())
        .add(undecided.rule().id());
  }

  private String heading(KeyGuide guide) {
    return switch (guide.place()) {
      case PART -> "From the data sheet of " + part(guide.owner());
      case RUN -> "At the run " + guide.owner();
      case WIRE -> "At the wiring from " + guide.owner();
      case SITE -> "At the site, under site";
      case SWITCHING -> "At the settings and the plant, under switching";
      case INTENT -> "At intent, which says when a load shall be on";
    };
  }

  private String part(String name) {
    Part part = netlist.parts().get(name);
    boolean here = part != null && part.head().mark().file().equals(netlist.text().file());
    return part != null && here ? name + ", line " + part.head().mark().line() : name;
  }

  private void write(StringBuilder out, int checks) {
    String head =
        "%s for want of %s"
            .formatted(
                checks == 1 ? "1 check could not be made" : checks + " checks could not be made",
                missing.size() == 1 ? "one thing" : missing.size() + " things");
    String id = "record.not-checked";
    int gap = style.width() - INDENT.length() - Lines.width(head) - id.length();
    out.append(style.know(Lines.padded("NOTE", INDENT.length())))
        .append(style.strong(head))
        .append(" ".repeat(Math.max(2, gap)))
        .append(style.faint(id))
        .append('\n');
    lines.forEach(
        (heading, keys) -> {
          out.append('\n');
          Lines.wrap(out, INDENT, heading + ":", style.width());
          keys.forEach((example, rules) -> key(out, example, rules));
        });
    if (!unwritable.isEmpty()) {
      out.append('\n');
      Lines.wrap(out, INDENT, "What no single key settles:", style.width());
      unwritable.forEach(
          (what, why) -> Lines.wrap(out, INDENT + "- ", what + ": " + why, style.width()));
    }
    out.append('\n');
    if (!lines.isEmpty()) {
      Lines.wrap(
          out,
          INDENT + "Do:    ",
          "Write these keys with your own figures (those above are examples), and check again.",
          style.width());
    } else {
      Lines.wrap(
          out, INDENT + "Do:    ", "Settle it on site before it is energised.", style.width());
    }
    out.append('\n');
  }

  /** The key as it may be written, and behind it, as a remark, the rules that wait for it. */
  private void key(StringBuilder out, String example, Set<String> rules) {
    String line = BAR + Lines.harmless(example);
    List<String> remarks = new ArrayList<>();
    StringBuilder remark = new StringBuilder();
    int room = style.width() - BAR.length() - 2;
    for (String rule : rules) {
      if (remark.length() > 0 && remark.length() + 2 + rule.length() > room) {
        remarks.add(remark.toString());
        remark.setLength(0);
      }
      remark.append(remark.length() == 0 ? "" : ", ").append(rule);
    }
    remarks.add(remark.toString());
    boolean beside =
        remarks.size() == 1 && Lines.width(line) + 4 + Lines.width(remarks.get(0)) <= style.width();
    out.append(line);
    if (beside) {
      out.append(style.faint("  # " + remarks.get(0)));
    } else {
      remarks.forEach(r -> out.append('\n').append(BAR).append(style.faint("# " + r)));
    }
    out.append('\n');
  }
}
