package org.coilwright.pdf;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.checklist.Blank;
import org.coilwright.checklist.Blanks;
import org.coilwright.checklist.Grounds;
import org.coilwright.checklist.Hold;
import org.coilwright.checklist.Section;
import org.coilwright.checklist.Step;
import org.coilwright.checklist.TestRow;

/** The tests, section by section, with the hold point between. */
final class TestPages {
  private static final double MM = Sheet.MM;

  private final Sheet sheet;
  private final Faces faces;
  private final Prose prose;
  private final Tag document;

  TestPages(Sheet sheet, Faces faces, Prose prose, Tag document) {
    this.sheet = sheet;
    this.faces = faces;
    this.prose = prose;
    this.document = document;
  }

  void draw(List<Step> steps) {
    for (Step step : steps) {
      if (step instanceof Section section) {
        section(section);
      } else if (step instanceof Hold hold) {
        hold(hold);
      }
    }
  }

  private void section(Section section) {
    Grid grid =
        new Grid(
            sheet,
            faces,
            List.of(
                new Grid.Column("No", 13 * MM),
                new Grid.Column("What to do", 0),
                new Grid.Column("Expected", 35 * MM),
                new Grid.Column("Reading", 42 * MM),
                new Grid.Column("Result", 19 * MM),
                new Grid.Column("Initials", 17 * MM)));
    section.rows().forEach(row -> row(grid, row));
    String last = section.rows().get(section.rows().size() - 1).number();
    String first = section.rows().get(0).number();
    grid.row(
        List.of(
            Cell.EMPTY,
            Cell.bold("Section " + section.number() + " complete: rows " + first + " to " + last),
            Cell.EMPTY,
            Cell.text("Date and time").andSpace(38 * MM, 22, "", Blanks.time(section)),
            Cell.EMPTY,
            Cell.EMPTY.andSpace(13 * MM, 24, "", Blanks.initials(section))));
    List<Prose.Line> before = new ArrayList<>();
    before.add(Prose.Line.plain(section.beginWith()));
    if (!section.readFirst().isEmpty()) {
      before.add(
          Prose.Line.bold("Read these cautions first: " + String.join(", ", section.readFirst())));
    }
    double above = before.stream().mapToDouble(prose::height).sum();
    double whole = above + grid.height();
    boolean onOnePage = whole + 30 <= sheet.fullRoom();
    String title = section.number() + "  " + section.stage().title() + ": " + section.title();
    grid.titled(title);
    prose.heading(title, Role.HEADING_2, onOnePage ? whole : above + grid.beginning());
    before.forEach(prose::paragraph);
    grid.draw(document);
  }

  private static void row(Grid grid, TestRow row) {
    Cell what =
        (row.condition().isBlank() ? Cell.EMPTY : Cell.text(row.condition()))
            .andBold(row.action())
            .and(row.where());
    Cell under = Cell.text("If not: " + row.otherwise());
    if (row.grounds().confirm()) {
      under = under.andTick("Limit from memory: " + Grounds.CONFIRM, Blanks.confirmed(row));
    }
    Cell number = Cell.bold(row.number()).andBold(row.live() ? "LIVE" : "");
    String unit = row.expected().unit();
    Cell reading =
        Blanks.isRead(row)
            ? Cell.EMPTY.andSpace(30 * MM, 24, unit, Blanks.reading(row))
            : Cell.EMPTY;
    grid.row(
        List.of(
            number,
            what,
            Cell.text(row.expected().text()),
            reading,
            Cell.EMPTY.andTick("PASS", Blanks.pass(row)).andTick("FAIL", Blanks.fail(row)),
            Cell.EMPTY.andSpace(13 * MM, 24, "", Blanks.initials(row))),
        under,
        row.live());
  }

  private void hold(Hold hold) {
    List<Blank> blanks = Blanks.hold(hold);
    Grid grid =
        new Grid(
            sheet,
            faces,
            List.of(
                new Grid.Column("", 60 * MM),
                new Grid.Column("", 0),
                new Grid.Column("", 40 * MM)));
    grid.row(
        List.of(
            Cell.text("Name").andSpace(54 * MM, 24, "", blanks.get(0)),
            Cell.text("Signature").andSpace(68 * MM, 24, "", blanks.get(1)),
            Cell.text("Date and time").andSpace(36 * MM, 24, "", blanks.get(2))));
    List<Prose.Line> lines = new ArrayList<>();
    lines.add(Prose.Line.large("HOLD: " + hold.title()));
    lines.add(Prose.Line.plain("Nobody goes past this line without a signature below it."));
    Grid conditions = new Grid(sheet, faces, List.of(new Grid.Column("", 0)));
    int condition = 0;
    for (String text : hold.conditions()) {
      condition++;
      Blank blank = Blanks.condition(hold, condition, text);
      conditions.row(List.of(Cell.EMPTY.andTick(text, blank)));
    }
    double height = 70 + conditions.height() + grid.height();
    if (height > sheet.room()) {
      sheet.freshPage();
    }
    sheet.down(6);
    sheet.add(new Piece.Fill(sheet.left(), sheet.y(), sheet.width(), 4, 0));
    sheet.down(8);
    prose.heading(lines.get(0).text(), Role.HEADING_2, 0);
    prose.paragraph(lines.get(1));
    conditions.draw(document);
    grid.draw(document);
    sheet.add(new Piece.Fill(sheet.left(), sheet.y(), sheet.width(), 4, 0));
    sheet.down(8);
  }
}
