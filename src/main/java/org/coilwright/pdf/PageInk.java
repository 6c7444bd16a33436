package org.coilwright.pdf;

import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.font.PDFont;

/** Puts the pieces of one page on it, and marks which of them are read out and which are not. */
final class PageInk {
  private final PDPageContentStream content;
  private final double pageHeight;
  private final PDFont regular;
  private final PDFont bold;
  private final PictureInk pictures;
  private final ReadingOrder order;
  private final int page;

  PageInk(
      PDPageContentStream content,
      double pageHeight,
      PDFont regular,
      PDFont bold,
      Lettering lettering,
      ReadingOrder order,
      int page) {
    this.content = content;
    this.pageHeight = pageHeight;
    this.regular = regular;
    this.bold = bold;
    this.pictures = new PictureInk(content, regular, lettering);
    this.order = order;
    this.page = page;
  }

  void draw(List<Piece> pieces) throws IOException {
    content.beginMarkedContent(COSName.ARTIFACT);
    // Areas first, so that nothing written is painted over.
    for (Piece piece : pieces) {
      if (piece instanceof Piece.Fill fill) {
        content.setNonStrokingColor((float) fill.grey());
        box(fill.x(), fill.y(), fill.width(), fill.height());
        content.fill();
      }
    }
    content.setNonStrokingColor(0f);
    for (Piece piece : pieces) {
      if (piece instanceof Piece.Rule rule) {
        content.setLineWidth((float) rule.width());
        content.moveTo((float) rule.x1(), y(rule.y1()));
        content.lineTo((float) rule.x2(), y(rule.y2()));
        content.stroke();
      } else if (piece instanceof Piece.Frame frame) {
        content.setLineWidth((float) frame.line());
        box(frame.x(), frame.y(), frame.width(), frame.height());
        content.stroke();
      }
    }
    content.endMarkedContent();
    Tag open = Tag.ARTIFACT;
    boolean marked = false;
    for (Piece piece : pieces) {
      if (piece instanceof Piece.Text text) {
        if (!marked || text.tag() != open) {
          if (marked) {
            content.endMarkedContent();
          }
          begin(text.tag());
          open = text.tag();
          marked = true;
        }
        write(text);
      }
    }
    if (marked) {
      content.endMarkedContent();
    }
    for (Piece piece : pieces) {
      if (piece instanceof Piece.Figure figure) {
        begin(figure.tag());
        order.box(figure, pageHeight);
        pictures.draw(figure, pageHeight);
        content.endMarkedContent();
      }
    }
  }

  private void begin(Tag tag) throws IOException {
    if (tag == Tag.ARTIFACT) {
      content.beginMarkedContent(COSName.ARTIFACT);
    } else {
      content.beginMarkedContent(COSName.getPDFName(tag.role().pdfName()), order.mark(tag, page));
    }
  }

  private void write(Piece.Text text) throws IOException {
    content.beginText();
    content.setFont(text.face() == Face.BOLD ? bold : regular, (float) text.size());
    content.newLineAtOffset((float) text.x(), y(text.baseline()));
    content.showText(text.text());
    content.endText();
  }

  private void box(double x, double top, double width, double height) throws IOException {
    content.addRect((float) x, y(top + height), (float) width, (float) height);
  }

  private float y(double fromTop) {
    return (float) (pageHeight - fromTop);
  }
}
