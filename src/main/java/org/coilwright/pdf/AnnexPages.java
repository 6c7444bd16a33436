package org.coilwright.pdf;

import java.util.List;
import java.util.stream.Stream;
import org.coilwright.checklist.Checklist;
import org.coilwright.checklist.Grounds;

/** For owner and planner: findings in full, settings rehearsed, faults, cautions in full. */
final class AnnexPages extends Pages {
  AnnexPages(Press press) {
    super(press);
  }

  void draw(Checklist checklist) {
    sheet.freshPage();
    prose.heading(texts.of("page.annex"), Role.HEADING_1, 0);
    if (!checklist.isStopped()) {
      String coverage = checklist.coverage().sentence(texts);
      if (!coverage.isEmpty()) {
        prose.paragraph(Prose.Line.plain(coverage));
      }
      findings(checklist.findings());
    }
    broken(checklist.broken());
    cautions(checklist.cautions());
    new FigurePages(sheet, prose, document)
        .draw(checklist.figures(Checklist.Figure.Beside.SETTINGS));
  }

  /** What the rules found, in full. */
  void findings(List<Checklist.FindingEntry> findings) {
    Grid grid =
        grid(
            new Grid.Column("", 15 * MM),
            new Grid.Column(texts.of("column.finding"), 0),
            new Grid.Column(texts.of("column.value"), 25 * MM),
            new Grid.Column(texts.of("column.limit"), 25 * MM));
    for (Checklist.FindingEntry finding : findings) {
      Cell text =
          Cell.bold(finding.headline())
              .and(finding.numbers())
              .and(finding.detail())
              .and(finding.remedy().isBlank() ? "" : texts.of("finding.do", finding.remedy()))
              .english(!texts.isOfRules());
      grid.row(
          List.of(
              Cell.bold(finding.weight()),
              text,
              Cell.text(finding.value()),
              Cell.text(finding.limit())),
          grounds(
              texts.of("finding.rule-at", texts.ruleNamed(finding.rule()), finding.at()),
              finding.grounds()),
          false);
    }
    grid.titled(texts.of("page.continued", texts.of("page.findings")));
    prose.heading(texts.of("page.findings"), Role.HEADING_2, grid.beginning());
    if (findings.isEmpty()) {
      prose.paragraph(Prose.Line.plain(texts.of("findings.none")));
    } else {
      grid.draw(document);
    }
  }

  /** Where a figure comes from. */
  private Cell grounds(String subject, Grounds grounds) {
    String sources =
        grounds.sources().isEmpty()
            ? ""
            : texts.of(
                "grounds.subject-from",
                String.join("; ", grounds.sources()),
                texts.standing(grounds.standing()));
    return Cell.text(subject + sources).and(grounds.confirm() ? texts.of("grounds.confirm") : "");
  }

  private void broken(List<Checklist.BrokenRow> rows) {
    Grid grid =
        grid(
            new Grid.Column(texts.of("column.breaks"), 0),
            new Grid.Column(texts.of("column.then"), 66 * MM),
            new Grid.Column(texts.of("column.stopped-by"), 38 * MM));
    String last = "";
    for (Checklist.BrokenRow row : rows) {
      List<Cell> cells =
          Stream.of(row.what(), row.then(), row.stops())
              .map(text -> Cell.text(text).english(!texts.isOfRules()))
              .toList();
      if (row.harm().equals(last)) {
        grid.tight(cells);
      } else {
        grid.headed(Cell.bold(row.harm()), cells);
      }
      last = row.harm();
    }
    grid.titled(texts.of("page.continued", texts.of("page.broken")));
    prose.heading(texts.of("page.broken"), Role.HEADING_2, grid.beginning() + 40);
    if (rows.isEmpty()) {
      prose.paragraph(Prose.Line.plain(texts.of("broken.none")));
    } else {
      prose.paragraph(Prose.Line.plain(texts.of("broken.note")));
      grid.draw(document);
    }
    sheet.down(8);
  }

  private void cautions(List<Checklist.Caution> cautions) {
    if (cautions.isEmpty()) {
      return;
    }
    Grid grid = grid(new Grid.Column("", 12 * MM), new Grid.Column("", 0));
    for (Checklist.Caution caution : cautions) {
      String text =
          String.join(" ", caution.paragraphs())
              + " "
              + texts.of("caution.source", caution.source());
      grid.tight(List.of(Cell.bold(caution.number()), Cell.bold(caution.title()).and(text)));
    }
    grid.titled(texts.of("page.continued", texts.of("page.cautions")));
    prose.heading(texts.of("page.cautions"), Role.HEADING_2, grid.beginning());
    grid.draw(document);
    sheet.down(8);
  }
}
