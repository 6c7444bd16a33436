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
      Cell text = Cell.bold(texts.of("caution.title", caution.title()));
      for (String paragraph : caution.paragraphs()) {
        text = text.and(paragraph);
      }
      grid.tight(
          List.of(
              Cell.bold(caution.number()), text.and(texts.of("caution.source", caution.source()))));
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
