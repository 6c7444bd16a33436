// Over 250 lines: one form of table after the other.
package org.coilwright.pdf;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.checklist.Blank;
import org.coilwright.checklist.Blanks;
import org.coilwright.checklist.Checklist;
import org.coilwright.checklist.Expected;
import org.coilwright.checklist.Manner;
import org.coilwright.checklist.Section;
import org.coilwright.checklist.TestLine;
import org.coilwright.checklist.TestRow;

/** The rows of a section as tables: the wiring list, parts, settings, and lines of readings. */
final class TestTables extends Pages {
  private static final double NUMBER = 13 * MM;

  TestTables(Press press) {
    super(press);
  }

  /** Rows of one form that follow each other are one table. */
  private enum Form {
    WIRES,
    PARTS,
    SETTINGS,
    LINES
  }

  private static Form form(TestLine line) {
    TestRow first = line.first();
    if (!first.wire().isEmpty()) {
      return Form.WIRES;
    } else if (first.manner() == Manner.LISTED) {
      return Form.PARTS;
    }
    boolean setting =
        first.manner() == Manner.COMPARED && first.expected() instanceof Expected.Setting;
    return setting ? Form.SETTINGS : Form.LINES;
  }

  /** The tables of a section, in order. */
  List<Grid> of(Checklist checklist, Section section) {
    List<Grid> grids = new ArrayList<>();
    List<TestLine> lines = section.lines();
    for (int from = 0; from < lines.size(); ) {
      Form form = form(lines.get(from));
      int to = from;
      while (to < lines.size() && form(lines.get(to)) == form) {
        to++;
      }
      List<TestLine> alike = lines.subList(from, to);
      grids.add(
          switch (form) {
            case WIRES -> wires(checklist, section);
            case PARTS -> parts(alike);
            case SETTINGS -> settings(alike);
            case LINES -> lines(alike);
          });
      from = to;
    }
    return grids;
  }

  private Grid wires(Checklist checklist, Section section) {
    Grid grid =
        grid(
            new Grid.Column(texts.of("column.no"), 10 * MM),
            new Grid.Column(texts.of("column.from"), 0),
            new Grid.Column(texts.of("column.to"), 20 * MM),
            new Grid.Column(texts.of("column.run-size"), 25 * MM),
            new Grid.Column(texts.of("column.colour"), 15 * MM),
            new Grid.Column(texts.of("column.tight"), 12 * MM),
            new Grid.Column(texts.of("column.state"), 10 * MM),
            new Grid.Column(texts.of("column.limit"), 25 * MM),
            new Grid.Column(texts.of("column.reading"), 27 * MM),
            new Grid.Column(texts.of("box.pass") + " · " + texts.of("box.fail"), 19 * MM));
    Map<String, TestRow> tests = new HashMap<>();
    section.rows().forEach(row -> tests.put(row.wire(), row));
    for (Checklist.WireRow wire : checklist.wires()) {
      Optional<TestRow> test = Optional.ofNullable(tests.get(wire.name()));
      Cell limit = Cell.EMPTY;
      Cell reading = Cell.EMPTY;
      Cell boxes = Cell.EMPTY;
      if (test.isPresent()) {
        TestRow row = test.get();
        limit = Cell.text(expected(row)).and(row.condition());
        if (Blanks.isRead(row)) {
          reading = reading.andSpace(PlaceRow.FIELD - 4, PlaceRow.HIGH, "", Blanks.reading(row));
        }
        boxes = boxes("", "", row);
      }
      grid.dense(
          List.of(
              Cell.bold(wire.number()),
              Cell.text(wire.from()),
              Cell.text(wire.to()),
              Cell.text((wire.run() + " " + wire.size()).strip()),
              Cell.text(wire.colour()),
              Cell.EMPTY.andTick("", Blanks.wired(wire)),
              Cell.text(wire.state()),
              limit,
              reading,
              boxes));
    }
    return grid;
  }

  private Grid parts(List<TestLine> lines) {
    Grid grid =
        grid(
            new Grid.Column(texts.of("column.no"), NUMBER),
            new Grid.Column(texts.of("column.part"), 0),
            new Grid.Column(texts.of("column.must-read"), 58 * MM),
            new Grid.Column(texts.of("column.listed"), 18 * MM),
            new Grid.Column(texts.of("column.if-not"), 44 * MM));
    for (TestLine line : lines) {
      TestRow row = line.first();
      grid.dense(
          List.of(
              Cell.bold(row.number()),
              Cell.EMPTY.andSaid(row.action(), row.where()),
              Cell.bold(setting(row)),
              Cell.EMPTY.andTick("", Blanks.pass(row)),
              Cell.EMPTY.andSpace(40 * MM, PlaceRow.HIGH, "", Blanks.reading(row))));
    }
    return grid;
  }

  private static String setting(TestRow row) {
    return row.expected() instanceof Expected.Setting setting ? setting.value() : "";
  }

  /** In two columns, read across. */
  private Grid settings(List<TestLine> lines) {
    double value = 26 * MM;
    double boxes = 27 * MM;
    double name = (sheet.width() - 2 * (value + boxes)) / 2;
    Grid grid =
        grid(
            new Grid.Column(texts.of("column.setting"), name),
            new Grid.Column(texts.of("column.must-read"), value),
            new Grid.Column("", boxes),
            new Grid.Column(texts.of("column.setting"), name),
            new Grid.Column(texts.of("column.must-read"), value),
            new Grid.Column("", boxes));
    for (int i = 0; i < lines.size(); i += 2) {
      List<Cell> cells = new ArrayList<>();
      for (int j = i; j < i + 2; j++) {
        if (j < lines.size()) {
          TestRow row = lines.get(j).first();
          cells.add(Cell.text(row.number() + " " + row.label()));
          cells.add(Cell.bold(setting(row)));
          cells.add(boxes(row));
        } else {
          cells.addAll(List.of(Cell.EMPTY, Cell.EMPTY, Cell.EMPTY));
        }
      }
      grid.dense(cells);
    }
    return grid;
  }

  private Grid lines(List<TestLine> lines) {
    Grid grid =
        grid(
            new Grid.Column("", NUMBER),
            new Grid.Column("", 0),
            new Grid.Column("", 30 * MM),
            new Grid.Column("", 36 * MM),
            new Grid.Column("", 25 * MM));
    for (TestLine line : lines) {
      if (line.isShared()) {
        shared(grid, line);
      } else {
        alone(grid, line.first());
      }
    }
    return grid;
  }

  private Cell number(TestLine line) {
    TestRow first = line.first();
    Cell number = Cell.bold(first.number());
    if (line.isShared()) {
      String last = line.rows().get(line.rows().size() - 1).number();
      return Cell.bold(first.number() + "–" + last);
    }
    return first.live() ? number.andBold(texts.of("row.live")) : number;
  }

  private void alone(Grid grid, TestRow row) {
    Cell number = number(new TestLine(List.of(row)));
    Cell text = Cell.EMPTY.andSaid(row.action(), row.where());
    Cell expected = Cell.bold(expected(row));
    if (!row.condition().isEmpty()) {
      grid.above(Cell.text(row.condition()));
    }
    Cell done = Cell.EMPTY.andTick(expected(row), Blanks.pass(row));
    switch (row.manner()) {
      case SWITCHED -> {
        Cell initials = Cell.EMPTY.andSpace(16 * MM, PlaceRow.HIGH, "", Blanks.initials(row));
        grid.over(List.of(number, text, done, initials), row.live(), 1, 2, 1, 1);
      }
      case DONE -> grid.over(List.of(number, text, done), row.live(), 1, 2, 2);
      case READ -> {
        Cell reading =
            Cell.EMPTY.andSpace(
                PlaceRow.FIELD, PlaceRow.HIGH, row.expected().unit(), Blanks.reading(row));
        grid.over(List.of(number, text, expected, reading, boxes(row)), row.live(), 1, 1, 1, 1, 1);
      }
      case COMPARED, LISTED, SEEN ->
          grid.over(List.of(number, text, expected, boxes(row)), row.live(), 1, 2, 1, 1);
    }
  }

  private Cell boxes(TestRow row) {
    return boxes(texts.of("box.pass"), texts.of("box.fail"), row);
  }

  /** Several readings under one text, and one pair of boxes for all. */
  private void shared(Grid grid, TestLine line) {
    TestRow first = line.first();
    boolean alike =
        line.rows().stream()
            .allMatch(row -> line.ticksAlone(row) || expected(row).equals(expected(first)));
    List<Cell.Place> places = new ArrayList<>();
    for (TestRow row : line.rows()) {
      boolean tick = line.ticksAlone(row);
      Blank blank = tick ? Blanks.pass(row) : Blanks.reading(row);
      places.add(
          new Cell.Place(
              row.label(),
              alike || tick ? "" : expected(row),
              alike ? row.expected().unit() : "",
              blank));
    }
    Cell text = Cell.bold(first.action());
    grid.line(
        alike
            ? List.of(number(line), text, Cell.bold(expected(first)), Cell.text(first.condition()))
            : List.of(number(line), text, Cell.text(first.where())),
        first.live() ? Cell.bold(texts.of("row.live")) : Cell.EMPTY,
        Cell.EMPTY.andPlaces(places),
        boxes(first),
        first.live());
  }

  private static Cell boxes(String pass, String fail, TestRow row) {
    return Cell.EMPTY.andEither(
        new Cell.Tick(pass, Blanks.pass(row)), new Cell.Tick(fail, Blanks.fail(row)));
  }

  private String expected(TestRow row) {
    String text = row.expected().text(texts);
    return row.grounds().confirm() ? text + " *" : text;
  }
}
