package org.coilwright.cli;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.coilwright.quantity.Words;
import org.coilwright.rule.FaultWords;
import org.coilwright.solve.FaultCase;
import org.coilwright.solve.FaultClass;
import org.coilwright.solve.StateTable;

/** One thing broken at a time, as a table that an electrician can read. */
final class FaultsText {
  private static final int GAP = 2;

  private final Style style;
  private final StringBuilder out = new StringBuilder();
  private final int[] widths;

  private FaultsText(Style style) {
    this.style = style;
    int rest = Math.max(48, style.width()) - 2 * GAP;
    int stops = rest * 2 / 9;
    int what = (rest - stops) / 2;
    this.widths = new int[] {what, rest - stops - what, stops};
  }

  /**
   * The table; one for each circuit where there are several.
   *
   * @param circuits what acts on one another
   */
  static String of(List<FaultClass> classes, List<StateTable> circuits, Style style) {
    FaultsText text = new FaultsText(style);
    Map<List<String>, List<FaultClass>> sections = sections(classes, circuits);
    sections.forEach(
        (loads, some) -> {
          if (sections.size() > 1) {
            text.heading(
                loads.isEmpty()
                    ? "In no circuit, or in several"
                    : "In the circuit of " + Words.all(loads));
          }
          text.write(some);
        });
    for (FaultClass alike : classes) {
      if (alike.like().harm() == FaultCase.Harm.HIDDEN) {
        text.out.append('\n').append(style.strong(FaultWords.title(FaultCase.Harm.HIDDEN)));
        text.out.append('\n');
        Lines.wrap(text.out, "", FaultWords.what(alike) + ".", style.width());
      }
    }
    if (classes.isEmpty()) {
      text.out.append("There is nothing in this circuit that could break.\n");
    }
    return text.out.toString();
  }

  /** What somebody notices, by the loads of the circuit it is noticed in; first what is in none. */
  private static Map<List<String>, List<FaultClass>> sections(
      List<FaultClass> classes, List<StateTable> circuits) {
    Map<String, List<String>> circuitOf = new HashMap<>();
    circuits.forEach(c -> c.loads().forEach(load -> circuitOf.put(load, c.loads())));
    Map<List<String>, List<FaultClass>> sections = new LinkedHashMap<>();
    sections.put(List.of(), new ArrayList<>());
    circuits.forEach(c -> sections.put(c.loads(), new ArrayList<>()));
    boolean one = sections.size() < 3;
    for (FaultClass alike : classes) {
      if (alike.like().harm() == FaultCase.Harm.HIDDEN) {
        continue;
      }
      List<List<String>> in =
          alike.like().effects().stream()
              .map(e -> circuitOf.getOrDefault(e.load(), List.of()))
              .distinct()
              .toList();
      List<String> section = one || in.size() != 1 ? List.of() : in.get(0);
      sections.computeIfAbsent(section, k -> new ArrayList<>()).add(alike);
    }
    sections.values().removeIf(List::isEmpty);
    return sections;
  }

  private void heading(String title) {
    if (!out.isEmpty()) {
      out.append('\n');
    }
    out.append(style.strong(title)).append("\n\n");
  }

  private void write(List<FaultClass> classes) {
    FaultCase.Harm last = null;
    for (FaultClass alike : classes) {
      FaultCase.Harm harm = alike.like().harm();
      if (harm != last) {
        if (last == null) {
          row("what breaks", "then", "still stopped by");
        }
        out.append('\n').append(style.strong(FaultWords.title(harm))).append('\n');
        last = harm;
      }
      row(
          FaultWords.what(alike),
          FaultWords.then(alike.like()),
          FaultWords.stoppedBy(alike.like()));
    }
  }

  private void row(String what, String then, String stops) {
    List<List<String>> cells =
        List.of(cell(what, widths[0]), cell(then, widths[1]), cell(stops, widths[2]));
    int lines = cells.stream().mapToInt(List::size).max().orElse(0);
    for (int i = 0; i < lines; i++) {
      StringBuilder line = new StringBuilder();
      for (int c = 0; c < cells.size(); c++) {
        String text = i < cells.get(c).size() ? cells.get(c).get(i) : "";
        line.append(Lines.padded(text, widths[c] + GAP));
      }
      out.append(line.toString().stripTrailing()).append('\n');
    }
  }

  private static List<String> cell(String text, int width) {
    StringBuilder wrapped = new StringBuilder();
    Lines.wrap(wrapped, "", text, width);
    return wrapped.toString().lines().toList();
  }
}
