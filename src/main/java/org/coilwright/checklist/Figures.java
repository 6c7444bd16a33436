package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.behaviour.RehearsalPicture;
import org.coilwright.behaviour.Rehearsed;
import org.coilwright.behaviour.Situation;
import org.coilwright.behaviour.Stage;
import org.coilwright.checklist.Checklist.Figure;
import org.coilwright.diagram.Diagram;
import org.coilwright.drawing.Picture;
import org.coilwright.rule.Report;
import org.coilwright.solve.Study;
import org.coilwright.table.Tables;

/** The pictures of a checklist. */
public final class Figures {
  private final Texts texts;
  private final Tables tables;

  Figures(Texts texts, Tables tables) {
    this.texts = texts;
    this.tables = tables;
  }

  List<Figure> of(Report report, Study study) {
    List<Figure> figures = new ArrayList<>();
    List<Diagram.Sheet> sheets = Diagram.of(study.circuit(), findings(report), texts::of);
    for (int i = 0; i < sheets.size(); i++) {
      Diagram.Sheet sheet = sheets.get(i);
      figures.add(
          new Figure(
              texts.of("figure.diagram", i + 1, sheets.size()),
              texts.of("figure.diagram-shows", String.join("; ", sheet.shows())),
              sheet.picture(),
              Figure.Beside.WIRES));
    }
    figures.addAll(days(study));
    return figures;
  }

  /** The settings rehearsed, where the netlist tells enough of them and of the plant. */
  private List<Figure> days(Study study) {
    if (study.circuit().netlist().switching().isEmpty()) {
      return List.of();
    }
    Stage stage = Stage.of(study, tables, false);
    if (!stage.wants().isEmpty()) {
      return List.of();
    }
    List<Rehearsed> all =
        Situation.of(stage.scene()).stream().map(s -> Rehearsed.of(s, stage.scene())).toList();
    List<Rehearsed> shown = RehearsalPicture.shown(all);
    List<Picture> pictures = RehearsalPicture.onPages(stage, all);
    List<Figure> figures = new ArrayList<>();
    for (int i = 0; i < pictures.size(); i++) {
      figures.add(
          new Figure(
              texts.of("figure.day", shown.get(i).situation().name()),
              texts.of(
                  "figure.day-shows",
                  RehearsalPicture.words(stage, shown.get(i)),
                  shown.get(i).situation().tells()),
              pictures.get(i),
              Figure.Beside.SETTINGS));
    }
    return figures;
  }

  /** What a diagram marks: the findings in the order of the report. */
  public static List<Diagram.Finding> findings(Report report) {
    return report.findings().stream()
        .map(v -> new Diagram.Finding(v.weight().name(), v.headline(), v.path()))
        .toList();
  }
}
