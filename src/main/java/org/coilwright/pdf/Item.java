package org.coilwright.pdf;

import java.util.ArrayList;
import java.util.List;

/** A cell's contents once its width is known: pieces that are never parted, one under another. */
sealed interface Item {
  /** Side of a tick box. */
  double TICK = 4.2 * Sheet.MM;

  /** Between two boxes, so that a pencil mark lands in one. */
  double CLEAR = 2 * Sheet.MM;

  double height();

  /** Draws it with its top left corner at (x, y). */
  void draw(Sheet sheet, double x, double y, Tag tag);

  /** Wraps a cell's contents to a width. */
  static List<Item> of(Cell cell, double width, Faces faces) {
    List<Item> items = new ArrayList<>();
    for (Cell.Content content : cell.contents()) {
      if (content instanceof Cell.Paragraph paragraph) {
        Face face = paragraph.face();
        for (String line : Wrapping.lines(paragraph.text(), faces.of(face), Type.BODY, width)) {
          items.add(new Words(line, face));
        }
      } else if (content instanceof Cell.Tick tick) {
        List<String> label =
            Wrapping.lines(tick.label(), faces.of(Face.REGULAR), Type.BODY, width - TICK - CLEAR);
        items.add(new Box(label.get(0)));
        label.stream().skip(1).forEach(more -> items.add(new Beside(more)));
      } else if (content instanceof Cell.Space space) {
        items.add(new Frame(space.width(), space.height(), space.unit()));
      }
    }
    return items;
  }

  /** Height of several, one under another. */
  static double height(List<Item> items) {
    return items.stream().mapToDouble(Item::height).sum();
  }

  /** A line of text. */
  record Words(String text, Face face) implements Item {
    @Override
    public double height() {
      return Type.LEADING;
    }

    @Override
    public void draw(Sheet sheet, double x, double y, Tag tag) {
      Item.write(sheet, x, y, face, text, tag);
    }
  }

  /** A tick box and the first line of its label. */
  record Box(String label) implements Item {
    @Override
    public double height() {
      return TICK + CLEAR;
    }

    @Override
    public void draw(Sheet sheet, double x, double y, Tag tag) {
      sheet.add(new Piece.Frame(x, y + 1, TICK, TICK, Type.HAIRLINE));
      Item.write(sheet, x + TICK + CLEAR, y, Face.REGULAR, label, tag);
    }
  }

  /** A further line of a tick box's label. */
  record Beside(String text) implements Item {
    @Override
    public double height() {
      return Type.LEADING;
    }

    @Override
    public void draw(Sheet sheet, double x, double y, Tag tag) {
      Item.write(sheet, x + TICK + CLEAR, y - CLEAR + 2, Face.REGULAR, text, tag);
    }
  }

  /** A frame to write in. */
  record Frame(double width, double frameHeight, String unit) implements Item {
    @Override
    public double height() {
      return frameHeight + 2;
    }

    @Override
    public void draw(Sheet sheet, double x, double y, Tag tag) {
      sheet.add(new Piece.Frame(x, y + 1, width, frameHeight, Type.HAIRLINE));
      double drop = (frameHeight - Type.LEADING) / 2;
      Item.write(sheet, x + width + 3, y + drop, Face.REGULAR, unit, tag);
    }
  }

  private static void write(Sheet sheet, double x, double y, Face face, String text, Tag tag) {
    if (!text.isEmpty()) {
      sheet.add(new Piece.Text(x, y + Type.LEADING - 3.2, Type.BODY, face, text, tag));
    }
  }
}
