package org.coilwright.pdf;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.coilwright.checklist.Blank;
import org.coilwright.checklist.Blanks;
import org.coilwright.checklist.Checklist;
import org.coilwright.checklist.Hold;
import org.coilwright.checklist.Manner;
import org.coilwright.checklist.Section;
import org.coilwright.checklist.Step;
import org.coilwright.checklist.TestRow;

/** The tests, section by section, the drawing before the wiring list, and the hold points. */
final class TestPages extends Pages {
  /** Height of a heading and what is kept free around it. */
  private static final double HEADING = 34;

  /** Part of a page that may stay blank so that a section is not parted. */
  private static final double MOST_BLANK = 0.15;

  private final FigurePages figures;
  private final TestTables tables;

  TestPages(Press press) {
    super(press);
    this.figures = new FigurePages(sheet, prose, document);
    this.tables = new TestTables(press);
  }

  void draw(Checklist checklist) {
    List<Checklist.Figure> drawings = checklist.figures(Checklist.Figure.Beside.WIRES);
    boolean drawn = false;
    for (Step step : checklist.steps()) {
      if (step instanceof Section section) {
        if (section.isWiring() && !drawn) {
          figures.draw(drawings);
          drawn = true;
        }
        section(checklist, section);
      } else if (step instanceof Hold hold) {
        hold(hold);
      }
    }
    if (!drawn) {
      figures.draw(drawings);
    }
  }

  private void section(Checklist checklist, Section section) {
    boolean takesTemperature =
        Blanks.takingTemperature(checklist.steps()).equals(Optional.of(section));
    List<Prose.Line> before = new ArrayList<>();
    before.add(Prose.Line.plain(texts.of("section.state", section.beginWith())));
    if (section.isWiring()) {
      checklist.wiringNotes().forEach(note -> before.add(Prose.Line.plain(note)));
    }
    String otherwise = otherwise(section);
    if (!otherwise.isEmpty()) {
      before.add(Prose.Line.plain(otherwise));
    }
    CautionBlock cautions = new CautionBlock(prose, texts, section.readFirst());
    List<Grid> grids = tables.of(checklist, section);
    Grid day = temperature(takesTemperature);
    Grid end = closing(section);
    double above =
        before.stream().mapToDouble(prose::height).sum() + cautions.height() + day.height();
    double whole = above + grids.stream().mapToDouble(Grid::height).sum() + end.height();
    String title =
        texts.of("section.title", section.number(), section.stage().title(texts), section.title());
    grids.forEach(grid -> grid.titled(texts.of("page.continued", title)));
    end.titled(texts.of("page.continued", title));
    boolean fits = whole + HEADING <= sheet.fullRoom();
    // parted between lines where more than a part of the page would stay blank
    boolean together = fits && sheet.room() < MOST_BLANK * sheet.fullRoom();
    double beginning = above + (grids.isEmpty() ? 0 : grids.get(0).beginning());
    prose.heading(title, Role.HEADING_2, together ? whole : beginning);
    before.forEach(prose::paragraph);
    cautions.draw();
    if (takesTemperature) {
      day.draw(document);
    }
    grids.forEach(grid -> grid.draw(document));
    end.draw(document);
  }

  /** Where the temperature is written that narrows the bands below it; empty elsewhere. */
  private Grid temperature(boolean takesIt) {
    Grid grid = grid(new Grid.Column("", 0), new Grid.Column("", 42 * MM));
    if (takesIt) {
      grid.row(
          List.of(
              Cell.bold(texts.of("temperature.label")).and(texts.of("temperature.note")),
              Cell.EMPTY.andSpace(30 * MM, 24, "°C", Blanks.temperature())));
    }
    return grid;
  }

  /** Who did the section and when. */
  private Grid closing(Section section) {
    Cell complete = Cell.bold(texts.of("section.complete", section.number()));
    if (section.confirm()) {
      complete = complete.andTick(texts.of("section.confirm"), Blanks.confirmed(section));
    }
    return grid(
            new Grid.Column("", 0),
            new Grid.Column("", 25 * MM),
            new Grid.Column("", 44 * MM),
            new Grid.Column("", 25 * MM),
            new Grid.Column("", 24 * MM))
        .dense(
            List.of(
                complete,
                Cell.text(texts.of("column.time")),
                Cell.EMPTY.andSpace(40 * MM, PlaceRow.HIGH, "", Blanks.time(section)),
                Cell.text(texts.of("column.initials")),
                Cell.EMPTY.andSpace(20 * MM, PlaceRow.HIGH, "", Blanks.initials(section))));
  }

  /** What to do about rows that are not met, those alike together, in one paragraph. */
  private String otherwise(Section section) {
    Map<String, List<TestRow>> alike = new LinkedHashMap<>();
    for (TestRow row : section.rows()) {
      if (row.manner() == Manner.DONE) {
        continue;
      }
      alike.computeIfAbsent(row.otherwise(), k -> new ArrayList<>()).add(row);
    }
    return alike.isEmpty()
        ? ""
        : texts.of(
            "section.if-not",
            alike.entrySet().stream()
                .map(
                    e ->
                        texts.of(
                            "section.if-not-row", Rows.ranges(e.getValue(), texts), e.getKey()))
                .collect(Collectors.joining(" ")));
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
    Grid conditions = grid(new Grid.Column("", 0));
    int condition = 0;
    for (String text : hold.conditions()) {
      condition++;
      Blank blank = Blanks.condition(hold, condition, text);
      conditions.dense(List.of(Cell.EMPTY.andTick(text, blank)));
    }
    double height = 66 + conditions.height() + grid.height();
    if (height > sheet.room()) {
      sheet.freshPage();
    }
    sheet.down(6);
    sheet.add(new Piece.Fill(sheet.left(), sheet.y(), sheet.width(), 4, 0));
    sheet.down(6);
    prose.heading(texts.of("hold.title", hold.title()), Role.HEADING_2, 0);
    prose.paragraph(Prose.Line.plain(texts.of("hold.note")));
    conditions.draw(document);
    grid.draw(document);
    sheet.add(new Piece.Fill(sheet.left(), sheet.y(), sheet.width(), 4, 0));
    sheet.down(8);
  }
}
