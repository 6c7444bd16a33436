package org.coilwright.pdf;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.coilwright.checklist.Checklist;
import org.coilwright.checklist.Grounds;
import org.coilwright.checklist.TestRow;

/** Where readings come from and what was satisfied: for nobody on site. */
final class ArchivePages extends Pages {
  private final Sources sources;

  ArchivePages(Press press) {
    super(press);
    this.sources = new Sources(texts);
  }

  void draw(Checklist checklist) {
    sheet.freshPage();
    prose.heading(texts.of("page.archive"), Role.HEADING_1, 0);
    reasons(checklist.rows());
    satisfied(checklist.satisfied());
    sources();
  }

  private void reasons(List<TestRow> rows) {
    Grid grid =
        grid(
            new Grid.Column(texts.of("column.rows"), 36 * MM),
            new Grid.Column(texts.of("column.reason"), 0));
    Map<Grounds, List<TestRow>> byGrounds = new LinkedHashMap<>();
    for (TestRow row : rows) {
      byGrounds.computeIfAbsent(row.grounds(), g -> new ArrayList<>()).add(row);
    }
    byGrounds.forEach(
        (grounds, numbers) ->
            grid.tight(
                List.of(
                    Cell.bold(Rows.ranges(numbers, texts)),
                    Cell.text((grounds.how() + " " + sources.of(grounds)).strip()))));
    grid.titled(texts.of("page.continued", texts.of("page.reasons")));
    prose.heading(texts.of("page.reasons"), Role.HEADING_2, grid.beginning());
    grid.draw(document);
  }

  private void satisfied(List<Checklist.SatisfiedEntry> entries) {
    Grid grid =
        grid(
            new Grid.Column(texts.of("column.count"), 16 * MM),
            new Grid.Column(texts.of("column.satisfied"), 0),
            new Grid.Column(texts.of("column.value"), 22 * MM),
            new Grid.Column(texts.of("column.limit"), 22 * MM));
    for (Checklist.SatisfiedEntry entry : entries) {
      String key = entry.value().isEmpty() ? "satisfied.rule" : "satisfied.rule-at";
      Cell rule =
          Cell.text(
              texts.of(key, entry.title(), entry.rule(), entry.at())
                  + " "
                  + sources.brief(entry.grounds()));
      if (entry.grounds().confirm()) {
        rule = rule.and(texts.of("grounds.confirm"));
      }
      grid.tight(
          List.of(
              Cell.bold(String.valueOf(entry.count())),
              rule,
              Cell.text(entry.value()),
              Cell.text(entry.limit())));
    }
    grid.titled(texts.of("page.continued", texts.of("page.satisfied")));
    prose.heading(texts.of("page.satisfied"), Role.HEADING_2, grid.beginning() + 30);
    prose.paragraph(
        Prose.Line.plain(texts.of(entries.isEmpty() ? "satisfied.none" : "satisfied.note")));
    if (!entries.isEmpty()) {
      grid.draw(document);
    }
    sheet.down(8);
  }

  private void sources() {
    if (sources.isEmpty()) {
      return;
    }
    prose.heading(texts.of("page.sources"), Role.HEADING_2, 60);
    prose.paragraph(Prose.Line.plain(sources.list()));
    sheet.down(8);
  }
}
