package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.checklist.Checklist.Figure;
import org.coilwright.diagram.Diagram;
import org.coilwright.rule.Report;
import org.coilwright.solve.Study;

/** The pictures of a checklist. */
public final class Figures {
  private final Texts texts;

  Figures(Texts texts) {
    this.texts = texts;
  }

  List<Figure> of(Report report, Study study) {
    List<Figure> figures = new ArrayList<>();
    List<Diagram.Sheet> sheets = Diagram.of(study.circuit(), findings(report));
    for (int i = 0; i < sheets.size(); i++) {
      Diagram.Sheet sheet = sheets.get(i);
      figures.add(
          new Figure(
              texts.of("figure.diagram", i + 1, sheets.size()),
              texts.of("figure.diagram-shows", String.join("; ", sheet.shows())),
              sheet.picture(),
              Figure.Beside.WIRES));
    }
    return figures;
  }

  /** What a diagram marks: the findings in the order of the report. */
  public static List<Diagram.Finding> findings(Report report) {
    return report.findings().stream()
        .map(v -> new Diagram.Finding(v.weight().name(), v.headline(), v.at()))
        .toList();
  }
}
