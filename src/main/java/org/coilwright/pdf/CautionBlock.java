package org.coilwright.pdf;

import java.util.List;
import java.util.stream.Collectors;
import org.coilwright.checklist.Checklist.Caution;
import org.coilwright.checklist.Texts;

/** Cautions at the step they belong to, by their titles; the annex has them in full. */
final class CautionBlock {
  private final Prose prose;
  private final List<Prose.Line> lines;

  CautionBlock(Prose prose, Texts texts, List<Caution> cautions) {
    this.prose = prose;
    String all =
        cautions.stream()
            .map(c -> texts.of("caution.line", c.number(), c.title()))
            .collect(Collectors.joining(" "));
    this.lines = all.isEmpty() ? List.of() : List.of(Prose.Line.plain(all));
  }

  /** Height if nothing has to be parted. */
  double height() {
    return lines.stream().mapToDouble(prose::height).sum();
  }

  void draw() {
    lines.forEach(prose::paragraph);
  }
}
