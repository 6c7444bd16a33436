package org.coilwright.pdf;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.checklist.FilledIn;

/** Where the next piece goes: pages of one size, margins, and a cursor that only moves down. */
final class Sheet {
  /** Points in a millimetre. */
  static final double MM = 72 / 25.4;

  /** Room for holes on the left, for a thumb elsewhere. */
  static final double LEFT_MARGIN = 20 * MM;

  static final double OTHER_MARGIN = 12 * MM;

  private final double pageWidth;
  private final double pageHeight;
  private final double headDepth;
  private final double footDepth;
  private final Optional<FilledIn> filledIn;
  private final List<List<Piece>> pages = new ArrayList<>();
  private double y;

  /**
   * Begins the first page.
   *
   * @param headDepth room under the top margin for the running head
   * @param footDepth room above the bottom margin for the running foot
   * @param filledIn what is printed in the frames; empty if they are still to be filled in
   */
  Sheet(
      double pageWidth,
      double pageHeight,
      double headDepth,
      double footDepth,
      Optional<FilledIn> filledIn) {
    this.pageWidth = pageWidth;
    this.pageHeight = pageHeight;
    this.headDepth = headDepth;
    this.footDepth = footDepth;
    this.filledIn = filledIn;
    newPage();
  }

  /** Begins a page. */
  void newPage() {
    pages.add(new ArrayList<>());
    y = top();
  }

  /** Begins a page unless nothing has been drawn on this one. */
  void freshPage() {
    if (y > top()) {
      newPage();
    }
  }

  void add(Piece piece) {
    pages.get(pages.size() - 1).add(piece);
  }

  void down(double by) {
    y += by;
  }

  double y() {
    return y;
  }

  double left() {
    return LEFT_MARGIN;
  }

  double right() {
    return pageWidth - OTHER_MARGIN;
  }

  double width() {
    return right() - left();
  }

  double top() {
    return OTHER_MARGIN + headDepth;
  }

  double bottom() {
    return pageHeight - OTHER_MARGIN - footDepth;
  }

  /** What is left of this page. */
  double room() {
    return bottom() - y;
  }

  /** What an empty page holds. */
  double fullRoom() {
    return bottom() - top();
  }

  /** Number of the page that is being filled, from 0. */
  int page() {
    return pages.size() - 1;
  }

  /** What is printed in the frames; empty if they are still to be filled in. */
  Optional<FilledIn> filledIn() {
    return filledIn;
  }

  double pageWidth() {
    return pageWidth;
  }

  double pageHeight() {
    return pageHeight;
  }

  List<List<Piece>> pages() {
    return pages;
  }
}
