package org.coilwright.pdf;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.checklist.Blank;
import org.coilwright.checklist.Blanks;
import org.coilwright.checklist.Hold;
import org.coilwright.checklist.Section;
import org.coilwright.checklist.Step;
import org.coilwright.checklist.TestRow;

/** The tests, section by section, with the hold point between. */
final class TestPages extends Pages {
  /** Height of a heading and what is kept free around it. */
  private static final double HEADING = 30;

  TestPages(Press press) {
    super(press);
  }

  void draw(List<Step> steps) {
    for (Step step : steps) {
      if (step instanceof Section section) {
        section(section, Blanks.takingTemperature(steps).equals(Optional.of(section)));
      } else if (step instanceof Hold hold) {
        hold(hold);
      }
    }
  }

  private void section(Section section, boolean takesTemperature) {
    List<Prose.Line> before = List.of(Prose.Line.plain(section.beginWith()));
    CautionBlock cautions = new CautionBlock(sheet, faces, document, texts, section.readFirst());
    Grid day = temperature(takesTemperature);
    double above =
        before.stream().mapToDouble(prose::height).sum() + cautions.height() + day.height();
    Grid grid = table(section, true);
    double whole = above + grid.height();
    boolean onOnePage = whole + HEADING <= sheet.fullRoom();
    if (!onOnePage) {
      grid = table(section, false);
    }
    String title =
        texts.of("section.title", section.number(), section.stage().title(texts), section.title());
    grid.titled(texts.of("page.continued", title));
    prose.heading(title, Role.HEADING_2, onOnePage ? whole : above + grid.beginning());
    before.forEach(prose::paragraph);
    cautions.draw();
    if (takesTemperature) {
      day.draw(document);
    }
    grid.draw(document);
  }

  /** Where the temperature is written that narrows the bands below it; empty elsewhere. */
  private Grid temperature(boolean takesIt) {
    Grid grid = grid(new Grid.Column("", 0), new Grid.Column("", 42 * MM));
    if (takesIt) {
      grid.row(
          List.of(
              Cell.large(texts.of("temperature.label"), Face.BOLD)
                  .and(texts.of("temperature.note")),
              Cell.EMPTY.andSpace(30 * MM, 24, "°C", Blanks.temperature())));
    }
    return grid;
  }

  /**
   * The rows of a section.
   *
   * @param listed true if what to do about a row that is not met stands in a list under the rows:
   *     only where both are on one page
   */
  private Grid table(Section section, boolean listed) {
    Grid grid =
        grid(
            new Grid.Column(texts.of("column.no"), 13 * MM),
            new Grid.Column(texts.of("column.what"), 0),
            new Grid.Column(texts.of("column.expected"), (listed ? 50 : 38) * MM),
            new Grid.Column(texts.of("column.reading"), 42 * MM),
            new Grid.Column(texts.of("column.result"), 38 * MM),
            new Grid.Column(texts.of("column.initials"), 17 * MM));
    section.rows().forEach(row -> row(grid, row, listed));
    if (listed) {
      Cell list = Cell.EMPTY;
      for (var alike : otherwise(section.rows()).entrySet()) {
        list = list.and(texts.of("section.if-not", Rows.ranges(alike.getValue()), alike.getKey()));
      }
      grid.tight(List.of(list));
    }
    String last = section.rows().get(section.rows().size() - 1).number();
    String first = section.rows().get(0).number();
    grid.closing(
        List.of(
            Cell.bold(texts.of("section.complete", section.number())),
            Cell.text(
                first.equals(last)
                    ? texts.of("section.row", first)
                    : texts.of("section.rows", first, last)),
            Cell.EMPTY.andSpace(38 * MM, 22, "", Blanks.time(section)),
            Cell.EMPTY,
            Cell.EMPTY.andSpace(13 * MM, 24, "", Blanks.initials(section))));
    return grid;
  }

  /** Places of rows in their section, by what to do if they are not met. */
  private static Map<String, List<TestRow>> otherwise(List<TestRow> rows) {
    Map<String, List<TestRow>> alike = new LinkedHashMap<>();
    for (TestRow row : rows) {
      alike.computeIfAbsent(row.otherwise(), k -> new ArrayList<>()).add(row);
    }
    return alike;
  }

  private void row(Grid grid, TestRow row, boolean listed) {
    Cell otherwise = listed ? Cell.EMPTY : Cell.text(texts.of("row.if-not", row.otherwise()));
    Cell expected = Cell.large(row.expected().text(texts), Face.REGULAR);
    if (row.grounds().confirm()) {
      expected = expected.andTick(texts.of("row.confirm"), Blanks.confirmed(row));
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
            expected,
            reading,
            Cell.EMPTY.andEither(
                new Cell.Tick(texts.of("box.pass"), Blanks.pass(row)),
                new Cell.Tick(texts.of("box.fail"), Blanks.fail(row))),
            Cell.EMPTY.andSpace(13 * MM, 24, "", Blanks.initials(row))),
        row.live());
  }

  private void hold(Hold hold) {
    List<Blank> blanks = Blanks.hold(hold);
    Grid grid =
        grid(new Grid.Column("", 60 * MM), new Grid.Column("", 0), new Grid.Column("", 40 * MM));
    grid.row(
        List.of(
            Cell.text(texts.of("column.name")).andSpace(54 * MM, 24, "", blanks.get(0)),
            Cell.text(texts.of("column.signature")).andSpace(68 * MM, 24, "", blanks.get(1)),
            Cell.text(texts.of("column.time")).andSpace(36 * MM, 24, "", blanks.get(2))));
    List<Prose.Line> lines = new ArrayList<>();
    lines.add(Prose.Line.large(texts.of("hold.title", hold.title())));
    lines.add(Prose.Line.plain(texts.of("hold.note")));
    Grid conditions = grid(new Grid.Column("", 0));
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
