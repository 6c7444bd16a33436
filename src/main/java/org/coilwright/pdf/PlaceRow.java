package org.coilwright.pdf;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.coilwright.checklist.Blank;
import org.coilwright.checklist.FilledIn;

/**
 * Places to fill in beside each other: a label, then a field with its unit or a box. They stand in
 * six columns; each takes as many as it needs with its label on two lines at most.
 */
record PlaceRow(List<Placed> placed) implements Item {
  /** Five characters by hand. */
  static final double FIELD = 24 * Sheet.MM;

  /** A line of handwriting. */
  static final double HIGH = 24;

  private static final int COLUMNS = 6;
  private static final int LABEL_LINES = 2;
  private static final double APART = 3;

  /** Between a field without a unit and the next place. */
  private static final double APART_ACROSS = 11.5;

  /** Between two rows, so that a mark lands in one box. */
  private static final double APART_DOWN = 4;

  /**
   * One place.
   *
   * @param x from the left edge of the row
   * @param label lines of it
   * @param item the field or the box
   * @param at where that stands, from the left edge of the row
   */
  record Placed(double x, List<String> label, Item item, double at) {
    double height() {
      return Math.max(item.height(), label.size() * Type.LEADING);
    }
  }

  static List<Item> of(
      List<Cell.Place> places, double width, Faces faces, Optional<FilledIn> filledIn) {
    List<Item> rows = new ArrayList<>();
    List<Placed> open = new ArrayList<>();
    double column = (width - CLEAR) / COLUMNS;
    int taken = 0;
    for (Cell.Place place : places) {
      boolean box = place.blank().kind() == Blank.Kind.TICK;
      double unit = faces.regular().width(place.unit(), Type.BODY);
      double item = box ? TICK + CLEAR : FIELD + (unit > 0 ? unit + 3 * APART : APART_ACROSS);
      int wanted = columns(place, column, item, faces);
      if (taken + wanted > COLUMNS) {
        rows.add(new PlaceRow(List.copyOf(open)));
        open.clear();
        taken = 0;
      }
      double x = taken * column;
      double room = wanted * column - item - APART;
      List<String> lines = new ArrayList<>();
      for (String text : List.of(place.label(), place.expected())) {
        if (!text.isEmpty()) {
          lines.addAll(Wrapping.lines(text, faces.regular(), Type.BODY, room));
        }
      }
      open.add(placed(place, x, lines, box, x + wanted * column - item, filledIn, faces));
      taken += wanted;
    }
    if (!open.isEmpty()) {
      rows.add(new PlaceRow(List.copyOf(open)));
    }
    return rows;
  }

  /** The fewest in which neither takes more than its lines. */
  private static int columns(Cell.Place place, double column, double item, Faces faces) {
    double longest =
        Stream.of(place.label().split(" ", -1))
            .mapToDouble(word -> wide(word, faces))
            .max()
            .orElse(0);
    double least = Math.max(longest, wide(place.expected(), faces));
    boolean box = place.blank().kind() == Blank.Kind.TICK;
    for (int wanted = 1; wanted < COLUMNS; wanted++) {
      double room = wanted * column - item - APART;
      int lines =
          Wrapping.lines(place.label(), faces.regular(), Type.BODY, Math.max(room, 1)).size();
      if (room >= least && lines <= (box ? 1 : LABEL_LINES)) {
        return wanted;
      }
    }
    return COLUMNS;
  }

  private static double wide(String text, Faces faces) {
    return faces.regular().width(faces.regular().printable(text), Type.BODY);
  }

  private static Placed placed(
      Cell.Place place,
      double x,
      List<String> label,
      boolean box,
      double at,
      Optional<FilledIn> filledIn,
      Faces faces) {
    if (box) {
      return new Placed(x + TICK + CLEAR, label, new Box("", place.blank(), filledIn), x);
    }
    Cell.Space space = new Cell.Space(FIELD, HIGH, place.unit(), place.blank());
    Item field = Frame.whole(space, faces, filledIn);
    return new Placed(x, label, field, at);
  }

  @Override
  public double height() {
    return placed.stream().mapToDouble(Placed::height).max().orElse(0) + APART_DOWN;
  }

  @Override
  public void draw(Sheet sheet, double x, double y, Tag tag) {
    for (Placed place : placed) {
      double lead = (place.height() - place.label().size() * Type.LEADING) / 2;
      double down = y + Math.max(0, lead);
      for (String line : place.label()) {
        Item.write(sheet, x + place.x(), down, Face.REGULAR, line, tag);
        down += Type.LEADING;
      }
      double drop = (place.height() - place.item().height()) / 2;
      place.item().draw(sheet, x + place.at(), y + drop, tag);
    }
  }
}
