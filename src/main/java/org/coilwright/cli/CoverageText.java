package org.coilwright.cli;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.checklist.Coverage;
import org.coilwright.checklist.Coverage.Entry;
import org.coilwright.checklist.Texts;

/** What {@code checklist --coverage} prints for a person: one line a mistake, in step order. */
final class CoverageText {
  private CoverageText() {}

  static String of(Coverage coverage, Style style) {
    StringBuilder out = new StringBuilder();
    if (coverage.entries().isEmpty()) {
      return out.append("No wires, so no wiring mistakes.\n").toString();
    }
    List<List<String>> rows = new ArrayList<>();
    rows.add(List.of("step", "shows", "must read", "would read", "mistake"));
    for (Entry entry : coverage.entries()) {
      rows.add(
          List.of(
              dash(entry.step()),
              entry.fate().text(),
              dash(entry.expected()),
              dash(entry.reading()),
              entry.mistake()));
    }
    Columns.print(out, rows, style);
    List<List<String>> totals = new ArrayList<>();
    totals.add(List.of("step", "mistakes that show here first"));
    coverage.perStep().forEach((step, count) -> totals.add(List.of(step, String.valueOf(count))));
    Columns.print(out.append('\n'), totals, style);
    out.append('\n').append(coverage.sentence(Texts.english())).append('\n');
    String choice = coverage.choice(Texts.english());
    return choice.isEmpty() ? out.toString() : out.append(choice).append('\n').toString();
  }

  private static String dash(String text) {
    return text.isEmpty() ? "–" : text;
  }
}
