package org.coilwright.pdf;

import org.coilwright.checklist.Blank;
import org.coilwright.drawing.Picture;

/** Something drawn on a page. Points, from the top left corner of the sheet, y downwards. */
sealed interface Piece {
  /** Where it stands in the reading order. */
  default Tag tag() {
    return Tag.ARTIFACT;
  }

  /** One line of text. */
  record Text(double x, double baseline, double size, Face face, String text, Tag tag)
      implements Piece {}

  /** A straight rule. */
  record Rule(double x1, double y1, double x2, double y2, double width) implements Piece {}

  /** An empty frame: a tick box or a space to write in. */
  record Frame(double x, double y, double width, double height, double line) implements Piece {}

  /** A picture with its upper left corner at a place. {@code scale} is at most 1. */
  record Figure(double x, double y, double scale, Picture picture, Tag tag) implements Piece {
    double width() {
      return scale * picture.width();
    }

    double height() {
      return scale * picture.height();
    }
  }

  /** Where a frame can be filled in on a screen. */
  record Entry(double x, double y, double width, double height, Blank blank, Tag tag)
      implements Piece {}

  /** A filled area; 0 is black, 1 is white. */
  record Fill(double x, double y, double width, double height, double grey) implements Piece {}
}
