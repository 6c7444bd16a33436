package org.coilwright.cli;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.rule.FaultWords;
import org.coilwright.solve.FaultCase;
import org.coilwright.solve.FaultClass;

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

  static String of(List<FaultClass> classes, Style style) {
    return new FaultsText(style).write(classes);
  }

  private String write(List<FaultClass> classes) {
    FaultCase.Harm last = null;
    List<FaultClass> hidden = new ArrayList<>();
    for (FaultClass alike : classes) {
      FaultCase.Harm harm = alike.like().harm();
      if (harm == FaultCase.Harm.HIDDEN) {
        hidden.add(alike);
        continue;
      }
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
    for (FaultClass alike : hidden) {
      out.append('\n').append(style.strong(FaultWords.title(FaultCase.Harm.HIDDEN))).append('\n');
      Lines.wrap(out, "", FaultWords.what(alike) + ".", style.width());
    }
    if (classes.isEmpty()) {
      out.append("There is nothing in this circuit that could break.\n");
    }
    return out.toString();
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
