package org.coilwright.pdf;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.coilwright.checklist.Blank;
import org.coilwright.checklist.Blanks;
import org.coilwright.checklist.Checklist;
import org.coilwright.checklist.Grounds;
import org.coilwright.checklist.TestRow;

/** The sign-off page and, behind it, the reasons. */
final class BackPages extends Pages {
  private final Sources sources;

  BackPages(Press press) {
    super(press);
    this.sources = new Sources(texts);
  }

  void draw(Checklist checklist) {
    signOff(checklist);
    reasons(checklist.rows());
    broken(checklist.broken());
    satisfied(checklist.satisfied());
    sources();
    prose.paragraph(
        Prose.Line.bold(
            texts.of(
                "page.end",
                checklist.wires().size(),
                checklist.rows().size(),
                checklist.openPoints().size(),
                checklist.findings().size())));
  }

  private void signOff(Checklist checklist) {
    sheet.freshPage();
    prose.heading(texts.of("page.sign-off"), Role.HEADING_2, 0);
    prose.framed(checklist.notice().stream().map(Prose.Line::bold).toList(), 1.2);
    Grid counts =
        grid(
            new Grid.Column(texts.of("sign-off.rows", checklist.rows().size()), 0),
            new Grid.Column(texts.of("sign-off.met"), 32 * MM),
            new Grid.Column(texts.of("sign-off.not-met"), 32 * MM),
            new Grid.Column(texts.of("sign-off.not-done"), 32 * MM));
    List<Cell> count = new ArrayList<>();
    count.add(Cell.text(texts.of("sign-off.count")));
    Blanks.counts().forEach(b -> count.add(Cell.EMPTY.andSpace(26 * MM, 24, "", b)));
    counts.row(count);
    counts.draw(document);
    sheet.down(8);
    Cell remarks = Cell.text(texts.of("sign-off.remarks"));
    grid(new Grid.Column("", 0))
        .row(List.of(remarks.andSpace(sheet.width() - 5, 110, "", Blanks.remarks())))
        .draw(document);
    sheet.down(8);
    Grid people =
        grid(
            new Grid.Column("", 29 * MM),
            new Grid.Column(texts.of("column.name"), 0),
            new Grid.Column(texts.of("column.licence"), 38 * MM),
            new Grid.Column(texts.of("column.date"), 28 * MM),
            new Grid.Column(texts.of("column.signature"), 44 * MM));
    for (Checklist.Signer signer : checklist.signers()) {
      List<Blank> blanks = Blanks.signer(signer);
      people.row(
          List.of(
              Cell.bold(signer.text()),
              Cell.EMPTY.andSpace(35 * MM, 30, "", blanks.get(0)),
              Cell.EMPTY.andSpace(34 * MM, 30, "", blanks.get(1)),
              Cell.EMPTY.andSpace(24 * MM, 30, "", blanks.get(2)),
              Cell.EMPTY.andSpace(40 * MM, 30, "", blanks.get(3))));
    }
    people.draw(document);
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
                    Cell.bold(Rows.ranges(numbers)),
                    Cell.text((grounds.how() + " " + sources.of(grounds)).strip()))));
    grid.titled(texts.of("page.continued", texts.of("page.reasons")));
    prose.heading(texts.of("page.reasons"), Role.HEADING_2, grid.beginning());
    grid.draw(document);
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
        rule = rule.andTick(texts.of("grounds.confirm"), Blanks.confirmed(entry));
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
