package org.coilwright.pdf;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.checklist.Blank;

/**
 * What stands in a cell, top to bottom, before it is known how wide the cell is.
 *
 * @param contents nothing for an empty cell
 */
record Cell(List<Content> contents) {
  static final Cell EMPTY = new Cell(List.of());

  Cell {
    contents = List.copyOf(contents);
  }

  static Cell text(String text) {
    return EMPTY.and(text);
  }

  static Cell bold(String text) {
    return EMPTY.andBold(text);
  }

  /** What is read from arm's length; an empty text makes an empty cell. */
  static Cell large(String text, Face face) {
    return text.isBlank() ? EMPTY : EMPTY.plus(new Paragraph(text, face, Type.STEP, false));
  }

  /** Another paragraph; an empty text adds nothing. */
  Cell and(String text) {
    return text.isBlank() ? this : plus(new Paragraph(text, Face.REGULAR, Type.BODY, false));
  }

  /** Another paragraph in bold; an empty text adds nothing. */
  Cell andBold(String text) {
    return text.isBlank() ? this : plus(new Paragraph(text, Face.BOLD, Type.BODY, false));
  }

  /** A paragraph that begins in bold and goes on in regular letters. */
  Cell andSaid(String bold, String plain) {
    return plain.isBlank() ? andBold(bold) : plus(new Said(bold, plain));
  }

  /** The same with all its paragraphs in English, on a sheet that is not. */
  Cell english(boolean foreign) {
    return new Cell(
        contents.stream()
            .map(
                content ->
                    content instanceof Paragraph p && foreign
                        ? new Paragraph(p.text(), p.face(), p.size(), true)
                        : content)
            .toList());
  }

  /** A tick box with a word beside it. */
  Cell andTick(String label, Blank blank) {
    return plus(new Tick(label, blank));
  }

  /** Fields and boxes beside each other, as many as fit. */
  Cell andPlaces(List<Place> places) {
    return plus(new Places(places));
  }

  /** Two boxes side by side; one of them is ticked. */
  Cell andEither(Tick one, Tick other) {
    return plus(new Either(one, other));
  }

  /** A frame to write in. */
  Cell andSpace(double width, double height, String unit, Blank blank) {
    return plus(new Space(width, height, unit, blank));
  }

  /** A form field that stays one in a final record. */
  Cell andField(double width, double height, Blank blank) {
    return plus(new Field(width, height, blank));
  }

  private Cell plus(Content content) {
    List<Content> all = new ArrayList<>(contents);
    all.add(content);
    return new Cell(all);
  }

  boolean isEmpty() {
    return contents.isEmpty();
  }

  /** One thing in a cell. */
  sealed interface Content {}

  /** Text that is wrapped to the cell; English on a sheet that is not where it says so. */
  record Paragraph(String text, Face face, double size, boolean english) implements Content {}

  /** A paragraph that begins in bold and goes on in regular letters. */
  record Said(String bold, String plain) implements Content {}

  /** A box to tick. */
  record Tick(String label, Blank blank) implements Content {}

  /** Two boxes side by side; one of them is ticked. */
  record Either(Tick one, Tick other) implements Content {}

  /** A frame to write in, with a unit behind it that may be empty. */
  record Space(double width, double height, String unit, Blank blank) implements Content {}

  /** A form field that stays one in a final record. */
  record Field(double width, double height, Blank blank) implements Content {}

  /** Places to fill in beside each other, in columns of equal width. */
  record Places(List<Place> places) implements Content {
    Places {
      places = List.copyOf(places);
    }
  }

  /**
   * One of them: what stands before it, and the field or box.
   *
   * @param label may be empty
   * @param expected under the label; may be empty
   * @param unit behind it; may be empty
   */
  record Place(String label, String expected, String unit, Blank blank) {}
}
