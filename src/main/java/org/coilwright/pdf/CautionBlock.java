package org.coilwright.pdf;

import java.util.List;
import org.coilwright.checklist.Checklist.Caution;
import org.coilwright.checklist.Texts;

/** Cautions on the page of the work they belong to, above its first step. */
final class CautionBlock {
  private final Grid grid;
  private final Tag document;
  private final boolean empty;

  CautionBlock(Sheet sheet, Faces faces, Tag document, Texts texts, List<Caution> cautions) {
    this.document = document;
    this.empty = cautions.isEmpty();
    this.grid =
        new Grid(sheet, faces, List.of(new Grid.Column("", 14 * Sheet.MM), new Grid.Column("", 0)));
    for (Caution caution : cautions) {
      String text =
          String.join(" ", caution.paragraphs())
              + " "
              + texts.of("caution.source", caution.source());
      grid.tight(
          List.of(
              Cell.large(caution.number(), Face.BOLD),
              Cell.large(texts.of("caution.title", caution.title()), Face.BOLD).and(text)));
    }
  }

  /** Height if nothing has to be parted. */
  double height() {
    return empty ? 0 : grid.height();
  }

  void draw() {
    if (!empty) {
      grid.draw(document);
    }
  }
}
