package org.coilwright.pdf;

import java.util.List;
import org.coilwright.checklist.Texts;

/** Some of the pages of a document, and what all pages are set with. */
abstract class Pages {
  static final double MM = Sheet.MM;

  final Sheet sheet;
  final Faces faces;
  final Prose prose;
  final Tag document;
  final Texts texts;

  Pages(Press press) {
    this.sheet = press.sheet();
    this.faces = press.faces();
    this.prose = press.prose();
    this.document = press.document();
    this.texts = press.texts();
  }

  /** Rows in these columns. */
  final Grid grid(Grid.Column... columns) {
    return new Grid(sheet, faces, List.of(columns));
  }

  /**
   * What pages are set with.
   *
   * @param document the tag that holds all others
   */
  record Press(Sheet sheet, Faces faces, Prose prose, Tag document, Texts texts) {}
}
