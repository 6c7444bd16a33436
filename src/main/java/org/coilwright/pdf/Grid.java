// Over 250 lines: measuring and drawing a row must agree.
package org.coilwright.pdf;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A table whose head is repeated on every page. A row moves to the next page whole if it can; one
 * that is taller than a page is parted between lines, so nothing is lost.
 */
final class Grid {
  private static final double PAD_X = 2.5;
  private static final double PAD_Y = 2;

  /** A line of handwriting needs this much. */
  private static final double LEAST_ROW = 24;

  private final Sheet sheet;
  private final Faces faces;
  private final List<Column> columns;
  private final double[] lefts;
  private final List<Band> head;
  private final List<Row> rows = new ArrayList<>();
  private String title = "";

  /**
   * A column.
   *
   * @param width in points; 0 for the one that takes what is left
   */
  record Column(String head, double width) {}

  /** A row, wrapped: its cells, and what stands under them from the second column on. */
  private record Row(List<Band> bands, boolean live) {
    double height() {
      return bands.stream().mapToDouble(Band::height).sum();
    }
  }

  /**
   * Cells side by side.
   *
   * @param edges left edges of the cells, then the right edge of the last
   * @param spans how many columns of the table each takes
   * @param least what it is high at least
   * @param above kept free above the cells' contents
   * @param below likewise below
   */
  @SuppressWarnings("ArrayRecordComponent") // never compared
  private record Band(
      List<List<Item>> cells,
      double[] edges,
      int[] spans,
      double least,
      double above,
      double below) {
    double height() {
      double tallest = cells.stream().mapToDouble(Item::height).max().orElse(0);
      return Math.max(least, tallest + above + below);
    }

    Band with(List<List<Item>> others, double lower) {
      return new Band(others, edges, spans, lower, above, below);
    }
  }

  Grid(Sheet sheet, Faces faces, List<Column> columns) {
    this.sheet = sheet;
    this.faces = faces;
    double fixed = columns.stream().mapToDouble(Column::width).sum();
    this.columns =
        columns.stream()
            .map(c -> c.width() > 0 ? c : new Column(c.head(), sheet.width() - fixed))
            .toList();
    this.lefts = new double[columns.size() + 1];
    lefts[0] = sheet.left();
    for (int i = 0; i < columns.size(); i++) {
      lefts[i + 1] = lefts[i] + this.columns.get(i).width();
    }
    boolean named = columns.stream().anyMatch(c -> !c.head().isEmpty());
    this.head =
        named
            ? List.of(band(columns.stream().map(c -> Cell.bold(c.head())).toList(), 0, 0))
            : List.of();
  }

  /**
   * What stands above the head where it is repeated, so that a page taken out of the pile explains
   * itself.
   */
  Grid titled(String title) {
    this.title = title;
    return this;
  }

  /** Adds a row of one cell a column. */
  Grid row(List<Cell> cells) {
    return row(cells, Cell.EMPTY, false);
  }

  /**
   * Adds a row.
   *
   * @param under stands beneath, from the second column to the right edge
   * @param live draws a black bar along its left edge
   */
  Grid row(List<Cell> cells, Cell under, boolean live) {
    List<Band> bands = new ArrayList<>();
    bands.add(band(cells, 0, LEAST_ROW));
    if (!under.isEmpty()) {
      bands.add(band(List.of(under), 1, 0));
    }
    rows.add(new Row(bands, live));
    return this;
  }

  /** Adds a row that nobody writes in: only as high as its text. */
  Grid tight(List<Cell> cells) {
    rows.add(new Row(List.of(band(cells, 0, 0)), false));
    return this;
  }

  /** Adds a row that nobody writes in, under a line of its own across all columns. */
  Grid headed(Cell over, List<Cell> cells) {
    rows.add(new Row(List.of(band(List.of(over), 0, 0), band(cells, 0, 0)), false));
    return this;
  }

  /**
   * Adds a step: what to do over the whole width, and what must come of it and is filled in below.
   *
   * @param number and whatever marks the row
   * @param condition what must be so first; may be empty
   * @param action one verb, one device
   * @param where may be empty
   * @param below one cell a column from the second on; the first of them begins at the left edge
   */
  Grid step(Cell number, Cell condition, Cell action, Cell where, List<Cell> below, boolean live) {
    List<Band> bands = new ArrayList<>();
    double text = lefts[0] + Math.max(lefts[1] - lefts[0], widest(number) + 2 * PAD_X);
    double right = lefts[columns.size()];
    int wide = columns.size() - 1;
    Cell beside = number;
    if (!condition.isEmpty()) {
      double[] edges = {lefts[0], text, right};
      bands.add(band(List.of(beside, condition), edges, new int[] {1, wide}, PAD_Y, 0));
      beside = Cell.EMPTY;
    }
    double above = bands.isEmpty() ? PAD_Y : 0;
    if (where.isEmpty()) {
      double[] edges = {lefts[0], text, right};
      bands.add(band(List.of(beside, action), edges, new int[] {1, wide}, above, 0));
    } else {
      double room = right - text;
      double middle = text + Math.min(Math.max(widest(action) + 10, room / 3), room * 0.6);
      double[] edges = {lefts[0], text, middle, right};
      int[] spans = {1, 2, wide - 2};
      bands.add(band(List.of(beside, action, where), edges, spans, above, 0));
    }
    bands.add(below(below, 0));
    rows.add(new Row(bands, live));
    return this;
  }

  /** Adds a row like the lower half of a {@link #step}. */
  Grid closing(List<Cell> cells) {
    rows.add(new Row(List.of(below(cells, PAD_Y)), false));
    return this;
  }

  private Band below(List<Cell> cells, double above) {
    double[] edges = new double[columns.size()];
    edges[0] = lefts[0];
    System.arraycopy(lefts, 2, edges, 1, edges.length - 1);
    int[] spans = new int[cells.size()];
    Arrays.fill(spans, 1);
    spans[0] = 2;
    return band(cells, edges, spans, above, PAD_Y);
  }

  /** Width of the longest paragraph of a cell if nothing is wrapped. */
  private double widest(Cell cell) {
    return cell.contents().stream()
        .filter(Cell.Paragraph.class::isInstance)
        .map(Cell.Paragraph.class::cast)
        .mapToDouble(
            p -> faces.of(p.face()).width(faces.of(p.face()).printable(p.text()), p.size()))
        .max()
        .orElse(0);
  }

  private Band band(List<Cell> cells, double[] edges, int[] spans, double above, double below) {
    List<List<Item>> wrapped = new ArrayList<>();
    for (int i = 0; i < cells.size(); i++) {
      double width = edges[i + 1] - edges[i] - 2 * PAD_X;
      wrapped.add(Item.of(cells.get(i), width, faces, sheet.filledIn()));
    }
    return new Band(wrapped, edges, spans, 0, above, below);
  }

  /** In the columns of the table, the last cell as wide as what is left of it. */
  private Band band(List<Cell> cells, int firstColumn, double least) {
    int skipped = firstColumn > 0 ? 1 : 0;
    List<Cell> all = new ArrayList<>(cells);
    if (firstColumn > 0) {
      all.add(0, Cell.EMPTY);
    }
    double[] edges = new double[all.size() + 1];
    int[] spans = new int[all.size()];
    for (int i = 0; i < all.size(); i++) {
      int column = i == 0 ? 0 : firstColumn + i - skipped;
      int next = i == all.size() - 1 ? columns.size() : firstColumn + i + 1 - skipped;
      edges[i] = lefts[column];
      spans[i] = next - column;
    }
    edges[all.size()] = lefts[columns.size()];
    Band made = band(all, edges, spans, PAD_Y, PAD_Y);
    return made.with(made.cells(), least);
  }

  /** Height if nothing has to be parted. */
  double height() {
    return headHeight() + rows.stream().mapToDouble(Row::height).sum();
  }

  /** Height of the head and the first row: what must stand under a heading. */
  double beginning() {
    return headHeight()
        + (rows.isEmpty() ? 0 : Math.min(rows.get(0).height(), sheet.fullRoom() / 2));
  }

  private double headHeight() {
    return head.stream().mapToDouble(Band::height).sum();
  }

  /** Draws it at the cursor. */
  void draw(Tag parent) {
    Tag table = parent.child(Role.TABLE);
    if (beginning() > sheet.room()) {
      sheet.freshPage();
    }
    if (!head.isEmpty()) {
      Tag row = table.child(Role.ROW);
      drawHead(columns.stream().map(c -> row.child(Role.HEAD_CELL)).toList());
    }
    for (Row row : rows) {
      draw(row, table);
    }
  }

  private void drawHead(List<Tag> tags) {
    for (Band band : head) {
      sheet.add(new Piece.Fill(sheet.left(), sheet.y(), sheet.width(), band.height(), 0.88));
      drawItems(band, band.cells(), tags);
      sheet.down(band.height());
      rule();
    }
  }

  private void draw(Row row, Tag table) {
    if (row.height() > sheet.room() && row.height() <= sheet.fullRoom() - headHeight()) {
      nextPage();
    }
    for (Band band : row.bands()) {
      drawParted(band, tags(band, table.child(Role.ROW)), row.live());
    }
    rule();
  }

  private static List<Tag> tags(Band band, Tag row) {
    List<Tag> tags = new ArrayList<>();
    for (int span : band.spans()) {
      tags.add(span == 1 ? row.child(Role.CELL) : row.cellOver(span));
    }
    return tags;
  }

  private void drawParted(Band band, List<Tag> tags, boolean live) {
    List<List<Item>> rest = band.cells();
    while (true) {
      Band left = band.with(rest, band.least());
      if (left.height() <= sheet.room()) {
        drawBand(left, left.height(), tags, live);
        return;
      }
      List<List<Item>> fitting = new ArrayList<>();
      List<List<Item>> later = new ArrayList<>();
      for (List<Item> cell : rest) {
        int cut = fitting(cell, sheet.room() - band.above() - band.below());
        fitting.add(cell.subList(0, cut));
        later.add(cell.subList(cut, cell.size()));
      }
      if (fitting.stream().anyMatch(cell -> !cell.isEmpty())) {
        drawBand(band.with(fitting, 0), sheet.room(), tags, live);
      }
      nextPage();
      rest = later;
    }
  }

  private static int fitting(List<Item> items, double room) {
    double used = 0;
    int count = 0;
    while (count < items.size() && used + items.get(count).height() <= room) {
      used += items.get(count).height();
      count++;
    }
    return count;
  }

  private void drawBand(Band band, double height, List<Tag> tags, boolean live) {
    if (live) {
      sheet.add(new Piece.Fill(sheet.left() - 4, sheet.y(), 3, height, 0));
    }
    drawItems(band, band.cells(), tags);
    sheet.down(height);
  }

  private void drawItems(Band band, List<List<Item>> cells, List<Tag> tags) {
    for (int i = 0; i < cells.size(); i++) {
      double y = sheet.y() + band.above();
      for (Item item : cells.get(i)) {
        item.draw(sheet, band.edges()[i] + PAD_X, y, tags.get(i));
        y += item.height();
      }
    }
  }

  private void nextPage() {
    sheet.newPage();
    if (!title.isEmpty()) {
      for (Item line : Item.of(Cell.bold(title), sheet.width(), faces, sheet.filledIn())) {
        line.draw(sheet, sheet.left(), sheet.y(), Tag.ARTIFACT);
        sheet.down(line.height());
      }
      sheet.down(4);
    }
    if (!head.isEmpty()) {
      drawHead(columns.stream().map(c -> Tag.ARTIFACT).toList());
    }
  }

  private void rule() {
    sheet.add(new Piece.Rule(sheet.left(), sheet.y(), sheet.right(), sheet.y(), Type.HAIRLINE));
  }
}
