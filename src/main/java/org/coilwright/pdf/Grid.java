// Over 250 lines: measuring and drawing a row must agree.
package org.coilwright.pdf;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A table whose head is repeated on every page. A row moves to the next page whole if it can; one
 * that is taller than a page is parted between lines, so nothing is lost.
 */
final class Grid {
  private static final double PAD_X = 2.5;
  private static final double PAD_Y = 2;

  /** A line of handwriting needs this much. */
  private static final double LEAST_ROW = 24;

  /** Two numbers of rows with a dash between. */
  private static final double NUMBERS = 22 * Sheet.MM;

  private final Sheet sheet;
  private final Faces faces;
  private final List<Column> columns;
  private final double[] lefts;
  private final List<Band> head;
  private final List<Row> rows = new ArrayList<>();
  private String title = "";
  private Optional<Band> above = Optional.empty();

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

  /** Adds a row of a list that is ticked from top to bottom: no more room than its boxes need. */
  Grid dense(List<Cell> cells) {
    Band made = band(cells, 0, 0);
    boolean written =
        made.cells().stream().flatMap(List::stream).anyMatch(Item.Frame.class::isInstance);
    double pad = written ? PAD_Y : PAD_Y / 4;
    rows.add(
        new Row(List.of(new Band(made.cells(), made.edges(), made.spans(), 0, pad, pad)), false));
    return this;
  }

  /** Adds a row that nobody writes in, under a line of its own across all columns. */
  Grid headed(Cell over, List<Cell> cells) {
    rows.add(new Row(List.of(band(List.of(over), 0, 0), band(cells, 0, 0)), false));
    return this;
  }

  /**
   * Adds a line whose places stand in one band under its words.
   *
   * @param words number, text, what is expected and what stands behind it; the number may reach
   *     into the text's column
   * @param mark under the number
   * @param places over all columns between
   * @param boxes in the last column
   */
  Grid line(List<Cell> words, Cell mark, Cell places, Cell boxes, boolean live) {
    int last = columns.size() - 1;
    double wide = lefts[0] + Math.max(columns.get(0).width(), NUMBERS);
    boolean three = words.size() == 3;
    double[] above =
        three
            ? new double[] {lefts[0], wide, lefts[2], lefts[last + 1]}
            : new double[] {lefts[0], wide, lefts[2], lefts[3], lefts[last + 1]};
    int[] spans = three ? new int[] {1, 1, last - 1} : new int[] {1, 1, 1, last - 2};
    double[] below = {lefts[0], lefts[1], lefts[last], lefts[last + 1]};
    List<Band> bands =
        List.of(
            band(words, above, spans, PAD_Y, 0),
            band(List.of(mark, places, boxes), below, new int[] {1, last - 1, 1}, 0, PAD_Y));
    rows.add(new Row(bands, live));
    return this;
  }

  /** Words of the next row that stand above it, from the second column on. */
  Grid above(Cell words) {
    above = Optional.of(band(List.of(words), 1, 0));
    return this;
  }

  /** Adds a row of cells that each take one column or more. */
  Grid over(List<Cell> cells, boolean live, int... spans) {
    double[] edges = new double[cells.size() + 1];
    int column = 0;
    for (int i = 0; i < cells.size(); i++) {
      edges[i] = lefts[column];
      column += spans[i];
    }
    edges[cells.size()] = lefts[columns.size()];
    List<Band> bands = new ArrayList<>();
    above.ifPresent(bands::add);
    above = Optional.empty();
    bands.add(band(cells, edges, spans, bands.isEmpty() ? PAD_Y : 0, PAD_Y));
    rows.add(new Row(bands, live));
    return this;
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
    if (beginning() > sheet.room() && sheet.y() > sheet.top()) {
      sheet.newPage();
      drawTitle();
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
    drawTitle();
    if (!head.isEmpty()) {
      drawHead(columns.stream().map(c -> Tag.ARTIFACT).toList());
    }
  }

  private void drawTitle() {
    if (!title.isEmpty()) {
      for (Item line : Item.of(Cell.bold(title), sheet.width(), faces, sheet.filledIn())) {
        line.draw(sheet, sheet.left(), sheet.y(), Tag.ARTIFACT);
        sheet.down(line.height());
      }
      sheet.down(4);
    }
  }

  private void rule() {
    sheet.add(new Piece.Rule(sheet.left(), sheet.y(), sheet.right(), sheet.y(), Type.HAIRLINE));
  }
}
