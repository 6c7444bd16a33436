package org.coilwright.pdf;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.checklist.Blank;
import org.coilwright.checklist.Blanks;
import org.coilwright.checklist.Checklist;
import org.coilwright.checklist.Grounds;
import org.coilwright.checklist.TestRow;

/** The sign-off page and, behind it, the reasons. */
final class BackPages {
  private static final double MM = Sheet.MM;

  private final Sheet sheet;
  private final Faces faces;
  private final Prose prose;
  private final Tag document;

  BackPages(Sheet sheet, Faces faces, Prose prose, Tag document) {
    this.sheet = sheet;
    this.faces = faces;
    this.prose = prose;
    this.document = document;
  }

  void draw(Checklist checklist) {
    signOff(checklist);
    reasons(checklist.rows());
    broken(checklist.broken());
    satisfied(checklist.satisfied());
    prose.paragraph(
        Prose.Line.bold(
            "End of the checklist: "
                + checklist.wires().size()
                + " wires, "
                + checklist.rows().size()
                + " test rows, "
                + checklist.openPoints().size()
                + " points to settle, "
                + checklist.findings().size()
                + " findings."));
  }

  private void signOff(Checklist checklist) {
    sheet.freshPage();
    prose.heading("Sign-off", Role.HEADING_2, 0);
    prose.framed(checklist.notice().stream().map(Prose.Line::bold).toList(), 1.2);
    Grid counts =
        grid(
            new Grid.Column("Test rows: " + checklist.rows().size(), 0),
            new Grid.Column("met", 32 * MM),
            new Grid.Column("not met", 32 * MM),
            new Grid.Column("not done", 32 * MM));
    List<Cell> count = new ArrayList<>();
    count.add(Cell.text("Count them; the sum must be right."));
    Blanks.counts().forEach(b -> count.add(Cell.EMPTY.andSpace(26 * MM, 24, "", b)));
    counts.row(count);
    counts.draw(document);
    sheet.down(8);
    Cell remarks = Cell.text("Remarks, rows not met and what was done about them");
    grid(new Grid.Column("", 0))
        .row(List.of(remarks.andSpace(sheet.width() - 5, 110, "", Blanks.remarks())))
        .draw(document);
    sheet.down(8);
    Grid people =
        grid(
            new Grid.Column("", 26 * MM),
            new Grid.Column("Name", 0),
            new Grid.Column("Licence or card number", 38 * MM),
            new Grid.Column("Date", 28 * MM),
            new Grid.Column("Signature", 44 * MM));
    for (Checklist.Signer signer : checklist.signers()) {
      List<Blank> blanks = Blanks.signer(signer);
      people.row(
          List.of(
              Cell.bold(signer.text()),
              Cell.EMPTY.andSpace(38 * MM, 30, "", blanks.get(0)),
              Cell.EMPTY.andSpace(34 * MM, 30, "", blanks.get(1)),
              Cell.EMPTY.andSpace(24 * MM, 30, "", blanks.get(2)),
              Cell.EMPTY.andSpace(40 * MM, 30, "", blanks.get(3))));
    }
    people.draw(document);
  }

  private void reasons(List<TestRow> rows) {
    sheet.freshPage();
    Grid grid =
        grid(new Grid.Column("Rows", 36 * MM), new Grid.Column("Where its reading comes from", 0));
    Map<Grounds, List<String>> byGrounds = new LinkedHashMap<>();
    for (TestRow row : rows) {
      byGrounds.computeIfAbsent(row.grounds(), g -> new ArrayList<>()).add(row.number());
    }
    byGrounds.forEach(
        (grounds, numbers) ->
            grid.tight(
                List.of(
                    Cell.bold(String.join(", ", numbers)),
                    FrontPages.grounds(Cell.text(grounds.how()), "", grounds, Optional.empty()))));
    grid.titled("Where the expected readings come from");
    prose.heading("Where the expected readings come from", Role.HEADING_2, grid.beginning());
    grid.draw(document);
  }

  private void broken(List<Checklist.BrokenRow> rows) {
    Grid grid =
        grid(
            new Grid.Column("What breaks", 0),
            new Grid.Column("Then", 66 * MM),
            new Grid.Column("Still stopped by", 38 * MM));
    String last = "";
    for (Checklist.BrokenRow row : rows) {
      List<Cell> cells =
          List.of(Cell.text(row.what()), Cell.text(row.then()), Cell.text(row.stops()));
      if (row.harm().equals(last)) {
        grid.tight(cells);
      } else {
        grid.headed(Cell.bold(row.harm()), cells);
      }
      last = row.harm();
    }
    grid.titled("One thing broken");
    prose.heading("One thing broken", Role.HEADING_2, grid.beginning() + 40);
    if (rows.isEmpty()) {
      prose.paragraph(Prose.Line.plain("There is nothing in this circuit that could break."));
    } else {
      prose.paragraph(
          Prose.Line.plain(
              "What each load then does, computed, the worst first. Two faults at once were not"
                  + " looked at."));
      grid.draw(document);
    }
    sheet.down(8);
  }

  private void satisfied(List<Checklist.SatisfiedEntry> entries) {
    Grid grid =
        grid(
            new Grid.Column("At", 26 * MM),
            new Grid.Column("Looked at and inside its limit", 0),
            new Grid.Column("Value", 25 * MM),
            new Grid.Column("Limit", 25 * MM));
    int number = 0;
    for (Checklist.SatisfiedEntry entry : entries) {
      number++;
      Cell text = Cell.text(entry.sentence());
      grid.tight(
          List.of(
              Cell.bold(entry.at()),
              FrontPages.grounds(
                  text,
                  entry.rule(),
                  entry.grounds(),
                  Optional.of(Blanks.satisfiedConfirmed(number))),
              Cell.text(entry.value()),
              Cell.text(entry.limit())));
    }
    grid.titled("What was computed and satisfied");
    prose.heading("What was computed and satisfied", Role.HEADING_2, grid.beginning());
    if (entries.isEmpty()) {
      prose.paragraph(Prose.Line.plain("Nothing."));
    } else {
      grid.draw(document);
    }
    sheet.down(8);
  }

  private Grid grid(Grid.Column... columns) {
    return new Grid(sheet, faces, List.of(columns));
  }
}
