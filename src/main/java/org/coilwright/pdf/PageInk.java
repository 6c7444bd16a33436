package org.coilwright.pdf;

import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.font.PDFont;

/** Puts the pieces of one page on it. */
final class PageInk {
  private final PDPageContentStream content;
  private final double pageHeight;
  private final PDFont regular;
  private final PDFont bold;

  PageInk(PDPageContentStream content, double pageHeight, PDFont regular, PDFont bold) {
    this.content = content;
    this.pageHeight = pageHeight;
    this.regular = regular;
    this.bold = bold;
  }

  void draw(List<Piece> pieces) throws IOException {
    // Areas first, so that nothing written is painted over.
    for (Piece piece : pieces) {
      if (piece instanceof Piece.Fill fill) {
        content.setNonStrokingColor((float) fill.grey());
        content.addRect(
            x(fill.x()), y(fill.y() + fill.height()), x(fill.width()), x(fill.height()));
        content.fill();
      }
    }
    content.setNonStrokingColor(0f);
    for (Piece piece : pieces) {
      if (piece instanceof Piece.Rule rule) {
        content.setLineWidth((float) rule.width());
        content.moveTo(x(rule.x1()), y(rule.y1()));
        content.lineTo(x(rule.x2()), y(rule.y2()));
        content.stroke();
      } else if (piece instanceof Piece.Frame frame) {
        content.setLineWidth((float) frame.line());
        content.addRect(
            x(frame.x()), y(frame.y() + frame.height()), x(frame.width()), x(frame.height()));
        content.stroke();
      } else if (piece instanceof Piece.Text text) {
        write(text);
      }
    }
  }

  private void write(Piece.Text text) throws IOException {
    content.beginText();
    content.setFont(text.face() == Face.BOLD ? bold : regular, (float) text.size());
    content.newLineAtOffset(x(text.x()), y(text.baseline()));
    content.showText(text.text());
    content.endText();
  }

  private static float x(double x) {
    return (float) x;
  }

  private float y(double fromTop) {
    return (float) (pageHeight - fromTop);
  }
}
