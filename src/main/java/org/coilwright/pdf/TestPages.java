package org.coilwright.pdf;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.checklist.Blank;
import org.coilwright.checklist.Blanks;
import org.coilwright.checklist.Hold;
import org.coilwright.checklist.Section;
import org.coilwright.checklist.Step;
import org.coilwright.checklist.TestRow;
import org.coilwright.checklist.Texts;

/** The tests, section by section, with the hold point between. */
final class TestPages {
  private static final double MM = Sheet.MM;

  private final Sheet sheet;
  private final Faces faces;
  private final Prose prose;
  private final Tag document;
  private final Texts texts;

  TestPages(Sheet sheet, Faces faces, Prose prose, Tag document, Texts texts) {
    this.sheet = sheet;
    this.faces = faces;
    this.prose = prose;
    this.document = document;
    this.texts = texts;
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
                new Grid.Column(texts.of("column.no"), 13 * MM),
                new Grid.Column(texts.of("column.what"), 0),
                new Grid.Column(texts.of("column.expected"), 36 * MM),
                new Grid.Column(texts.of("column.reading"), 42 * MM),
                new Grid.Column(texts.of("column.result"), 20 * MM),
                new Grid.Column(texts.of("column.initials"), 17 * MM)));
    section.rows().forEach(row -> row(grid, row));
    String last = section.rows().get(section.rows().size() - 1).number();
    String first = section.rows().get(0).number();
    grid.closing(
        List.of(
            Cell.bold(texts.of("section.complete", section.number(), first, last)),
            Cell.text(texts.of("column.time")),
            Cell.EMPTY.andSpace(38 * MM, 22, "", Blanks.time(section)),
            Cell.EMPTY,
            Cell.EMPTY.andSpace(13 * MM, 24, "", Blanks.initials(section))));
    List<Prose.Line> before = new ArrayList<>();
    before.add(Prose.Line.plain(section.beginWith()));
    CautionBlock cautions = new CautionBlock(sheet, faces, document, texts, section.readFirst());
    double above = before.stream().mapToDouble(prose::height).sum() + cautions.height();
    double whole = above + grid.height();
    boolean onOnePage = whole + 30 <= sheet.fullRoom();
    String title =
        texts.of("section.title", section.number(), section.stage().title(texts), section.title());
    grid.titled(texts.of("page.continued", title));
    prose.heading(title, Role.HEADING_2, onOnePage ? whole : above + grid.beginning());
    before.forEach(prose::paragraph);
    cautions.draw();
    grid.draw(document);
  }

  private void row(Grid grid, TestRow row) {
    Cell otherwise = Cell.text(texts.of("row.if-not", row.otherwise()));
    if (row.grounds().confirm()) {
      otherwise = otherwise.andTick(texts.of("row.confirm"), Blanks.confirmed(row));
    }
    String number = row.live() ? row.number() + "  " + texts.of("row.live") : row.number();
    String unit = row.expected().unit();
    Cell reading =
        Blanks.isRead(row)
            ? Cell.EMPTY.andSpace(30 * MM, 24, unit, Blanks.reading(row))
            : Cell.EMPTY;
    grid.step(
        Cell.large(number, Face.BOLD),
        Cell.text(row.condition()),
        Cell.large(row.action(), Face.BOLD),
        Cell.large(row.where(), Face.REGULAR),
        List.of(
            otherwise,
            Cell.large(row.expected().text(texts), Face.REGULAR),
            reading,
            Cell.EMPTY
                .andTick(texts.of("box.pass"), Blanks.pass(row))
                .andTick(texts.of("box.fail"), Blanks.fail(row)),
            Cell.EMPTY.andSpace(13 * MM, 24, "", Blanks.initials(row))),
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
            Cell.text(texts.of("column.name")).andSpace(54 * MM, 24, "", blanks.get(0)),
            Cell.text(texts.of("column.signature")).andSpace(68 * MM, 24, "", blanks.get(1)),
            Cell.text(texts.of("column.time")).andSpace(36 * MM, 24, "", blanks.get(2))));
    List<Prose.Line> lines = new ArrayList<>();
    lines.add(Prose.Line.large(texts.of("hold.title", hold.title())));
    lines.add(Prose.Line.plain(texts.of("hold.note")));
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
