package org.coilwright.pdf;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.checklist.Blank;
import org.coilwright.checklist.FilledIn;

/** A cell's contents once its width is known: pieces that are never parted, one under another. */
sealed interface Item
    permits Item.Words, Item.Box, Item.Either, Item.Beside, Item.Frame, MixedWords, PlaceRow {
  /** Side of a tick box. */
  double TICK = 4.2 * Sheet.MM;

  /** Between two boxes, so that a pencil mark lands in one. */
  double CLEAR = 2 * Sheet.MM;

  /** Part of the size that is kept free below the baseline. */
  double DESCENT = 0.32;

  double height();

  /** Draws it with its top left corner at (x, y). */
  void draw(Sheet sheet, double x, double y, Tag tag);

  /**
   * Wraps a cell's contents to a width.
   *
   * @param filledIn what is printed in the frames; empty if they are still to be filled in
   */
  static List<Item> of(Cell cell, double width, Faces faces, Optional<FilledIn> filledIn) {
    List<Item> items = new ArrayList<>();
    for (Cell.Content content : cell.contents()) {
      if (content instanceof Cell.Paragraph paragraph) {
        Face face = paragraph.face();
        double size = paragraph.size();
        for (String line : Wrapping.lines(paragraph.text(), faces.of(face), size, width)) {
          items.add(new Words(line, face, size, paragraph.english()));
        }
      } else if (content instanceof Cell.Said said) {
        items.addAll(MixedWords.of(said, width, faces));
      } else if (content instanceof Cell.Tick tick) {
        List<String> label =
            Wrapping.lines(tick.label(), faces.of(Face.REGULAR), Type.BODY, width - TICK - CLEAR);
        items.add(new Box(label.get(0), tick.blank(), filledIn));
        label.stream().skip(1).forEach(more -> items.add(new Beside(more)));
      } else if (content instanceof Cell.Either either) {
        double label = faces.of(Face.REGULAR).width(either.one().label(), Type.BODY);
        items.add(
            new Either(
                new Box(either.one().label(), either.one().blank(), filledIn),
                new Box(either.other().label(), either.other().blank(), filledIn),
                TICK + CLEAR + label + CLEAR));
      } else if (content instanceof Cell.Space space) {
        items.addAll(Frame.of(space, faces, filledIn));
      } else if (content instanceof Cell.Places places) {
        items.addAll(PlaceRow.of(places.places(), width, faces, filledIn));
      } else if (content instanceof Cell.Field field) {
        items.add(new Frame(field.width(), field.height(), "", field.blank(), Optional.empty()));
      }
    }
    return items;
  }

  /** Height of several, one under another. */
  static double height(List<Item> items) {
    return items.stream().mapToDouble(Item::height).sum();
  }

  /** A line of text. */
  record Words(String text, Face face, double size, boolean english) implements Item {
    @Override
    public double height() {
      return Type.leading(size);
    }

    @Override
    public void draw(Sheet sheet, double x, double y, Tag tag) {
      boolean marked = english && tag != Tag.ARTIFACT;
      Item.write(sheet, x, y, face, size, text, marked ? tag.inLanguage("en") : tag);
    }
  }

  /** A tick box and the first line of its label. */
  record Box(String label, Blank blank, Optional<FilledIn> filledIn) implements Item {
    /** Where the mark stands in its box. */
    private static final double MARK = 2;

    @Override
    public double height() {
      return TICK + CLEAR;
    }

    @Override
    public void draw(Sheet sheet, double x, double y, Tag tag) {
      sheet.add(new Piece.Frame(x, y + 1, TICK, TICK, Type.HAIRLINE));
      if (filledIn.isEmpty()) {
        sheet.add(new Piece.Entry(x, y + 1, TICK, TICK, blank, tag.child(Role.FORM)));
      } else if (filledIn.get().isTicked(blank)) {
        Item.write(sheet, x + MARK, y, Face.BOLD, "\u2713", tag);
      }
      Item.write(sheet, x + TICK + CLEAR, y, Face.REGULAR, label, tag);
    }
  }

  /** Two tick boxes side by side. */
  record Either(Box one, Box other, double apart) implements Item {
    @Override
    public double height() {
      return Math.max(one.height(), other.height());
    }

    @Override
    public void draw(Sheet sheet, double x, double y, Tag tag) {
      one.draw(sheet, x, y + CLEAR / 2, tag);
      other.draw(sheet, x + apart, y + CLEAR / 2, tag);
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

  /** A frame to write in, or with what was written. */
  record Frame(
      double width, double frameHeight, String unit, Blank blank, Optional<List<String>> written)
      implements Item {
    private static final double PAD = 3;

    /** More lines than these follow the frame, so that a page can be turned between them. */
    private static final int MOST_LINES = 12;

    static List<Item> of(Cell.Space space, Faces faces, Optional<FilledIn> filledIn) {
      Optional<List<String>> written =
          filledIn.map(
              in ->
                  in.text(space.blank()).stream()
                      .flatMap(String::lines)
                      .flatMap(line -> wrapped(line, space.width(), faces).stream())
                      .toList());
      List<String> lines = written.orElse(List.of());
      int framed = Math.min(MOST_LINES, lines.size());
      double height = Math.max(space.height(), framed * Type.LEADING + 2);
      List<Item> items = new ArrayList<>();
      items.add(
          new Frame(
              space.width(),
              height,
              space.unit(),
              space.blank(),
              written.map(all -> all.subList(0, framed))));
      for (String line : lines.subList(framed, lines.size())) {
        items.add(new Words(line, Face.REGULAR, Type.BODY, false));
      }
      return items;
    }

    /** The frame with all that was written in it, however much that is. */
    static Frame whole(Cell.Space space, Faces faces, Optional<FilledIn> filledIn) {
      Optional<List<String>> written =
          filledIn.map(
              in ->
                  in.text(space.blank()).stream()
                      .flatMap(String::lines)
                      .flatMap(line -> wrapped(line, space.width(), faces).stream())
                      .toList());
      double lines = written.orElse(List.of()).size();
      double height = Math.max(space.height(), lines * Type.LEADING + 2);
      return new Frame(space.width(), height, space.unit(), space.blank(), written);
    }

    private static List<String> wrapped(String line, double width, Faces faces) {
      return Wrapping.lines(line, faces.regular(), Type.BODY, width - 2 * PAD);
    }

    @Override
    public double height() {
      return frameHeight + 2;
    }

    @Override
    public void draw(Sheet sheet, double x, double y, Tag tag) {
      sheet.add(new Piece.Frame(x, y + 1, width, frameHeight, Type.HAIRLINE));
      if (written.isEmpty()) {
        Tag form = tag.child(Role.FORM);
        sheet.add(new Piece.Entry(x, y + 1, width, frameHeight, blank, form));
      } else {
        List<String> lines = written.get();
        double down = y + Math.max(0, (frameHeight - lines.size() * Type.LEADING) / 2);
        for (String line : lines) {
          Item.write(sheet, x + PAD, down, Face.REGULAR, line, tag);
          down += Type.LEADING;
        }
      }
      double drop = (frameHeight - Type.LEADING) / 2;
      Item.write(sheet, x + width + 3, y + drop, Face.REGULAR, unit, tag);
    }
  }

  static void write(Sheet sheet, double x, double y, Face face, String text, Tag tag) {
    write(sheet, x, y, face, Type.BODY, text, tag);
  }

  static void write(Sheet sheet, double x, double y, Face face, double size, String text, Tag tag) {
    if (!text.isEmpty()) {
      double baseline = y + Type.leading(size) - DESCENT * size;
      sheet.add(new Piece.Text(x, baseline, size, face, text, tag));
    }
  }
}
