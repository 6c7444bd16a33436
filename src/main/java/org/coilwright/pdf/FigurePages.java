package org.coilwright.pdf;

import java.util.List;
import org.coilwright.checklist.Checklist;
import org.coilwright.drawing.Picture;

/** Pictures, as large as the page allows and never larger than they are meant to be. */
final class FigurePages {
  private static final double HEADING = 40;

  private final Sheet sheet;
  private final Prose prose;
  private final Tag document;

  FigurePages(Sheet sheet, Prose prose, Tag document) {
    this.sheet = sheet;
    this.prose = prose;
    this.document = document;
  }

  /** Each under its heading; two that fit on a page share it. */
  void draw(List<Checklist.Figure> figures) {
    for (Checklist.Figure figure : figures) {
      Picture picture = figure.picture();
      double wide = Math.min(1, sheet.width() / picture.width());
      double height = Math.min(picture.height() * wide, sheet.fullRoom() - HEADING);
      prose.heading(figure.title(), Role.HEADING_2, height);
      double scale = Math.min(wide, height / picture.height());
      Tag tag = document.figure(figure.alternative());
      sheet.add(new Piece.Figure(sheet.left(), sheet.y(), scale, picture, tag));
      sheet.down(picture.height() * scale + 4);
    }
  }
}
