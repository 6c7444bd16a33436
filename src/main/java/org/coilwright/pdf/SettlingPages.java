package org.coilwright.pdf;

import java.util.List;
import org.coilwright.checklist.Blanks;
import org.coilwright.checklist.Checklist;

/** What needs a person's word before the work begins: accepted deviations and open points. */
final class SettlingPages extends Pages {

  SettlingPages(Press press) {
    super(press);
  }

  void draw(Checklist checklist) {
    accepted(checklist.accepted());
    openPoints(checklist.openPoints());
  }

  private void accepted(List<Checklist.AcceptedEntry> entries) {
    if (entries.isEmpty()) {
      return;
    }
    Grid grid =
        grid(
            new Grid.Column("", 15 * MM),
            new Grid.Column(texts.of("column.accepted"), 0),
            new Grid.Column(texts.of("column.initials"), 17 * MM));
    for (Checklist.AcceptedEntry entry : entries) {
      Cell text =
          Cell.bold(entry.headline())
              .english(!texts.isOfRules())
              .and(texts.of("finding.rule-at", texts.ruleNamed(entry.rule()), entry.at()))
              .and(texts.of("accepted.by", entry.by(), entry.because()))
              .and(entry.counts() ? texts.of("finding.still-counts") : "");
      grid.row(
          List.of(
              Cell.bold(entry.weight()),
              text,
              Cell.EMPTY.andSpace(13 * MM, 24, "", Blanks.initials(entry))));
    }
    grid.titled(texts.of("page.continued", texts.of("page.accepted")));
    prose.heading(texts.of("page.accepted"), Role.HEADING_2, grid.beginning() + 20);
    prose.paragraph(Prose.Line.plain(texts.of("accepted.note")));
    grid.draw(document);
  }

  private void openPoints(List<Checklist.OpenPoint> points) {
    Grid grid =
        grid(
            new Grid.Column(texts.of("column.no"), 9 * MM),
            new Grid.Column(texts.of("column.find-out"), 0),
            new Grid.Column(texts.of("column.found"), 42 * MM),
            new Grid.Column(texts.of("column.initials"), 17 * MM));
    for (Checklist.OpenPoint point : points) {
      grid.row(
          List.of(
              Cell.bold(point.number()),
              Cell.EMPTY.andSaid(point.what(), point.why()),
              Cell.EMPTY.andSpace(38 * MM, 24, "", Blanks.found(point)),
              Cell.EMPTY.andSpace(13 * MM, 24, "", Blanks.initials(point))));
    }
    grid.titled(texts.of("page.continued", texts.of("page.points")));
    prose.heading(texts.of("page.points"), Role.HEADING_2, grid.beginning());
    if (points.isEmpty()) {
      prose.paragraph(Prose.Line.plain(texts.of("points.none")));
    } else {
      prose.paragraph(Prose.Line.plain(texts.of("points.note")));
      grid.draw(document);
    }
  }
}
