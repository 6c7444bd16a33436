package org.coilwright.pdf;

import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.util.Matrix;
import org.coilwright.drawing.Shape;

/** Puts a picture on a page as lines, areas and letters of the embedded font. */
final class PictureInk {
  private final PDPageContentStream content;
  private final PDFont font;
  private final Lettering lettering;

  PictureInk(PDPageContentStream content, PDFont font, Lettering lettering) {
    this.content = content;
    this.font = font;
    this.lettering = lettering;
  }

  /** Draws it with its upper left corner at the figure's place. */
  void draw(Piece.Figure figure, double pageHeight) throws IOException {
    content.saveGraphicsState();
    float scale = (float) figure.scale();
    content.transform(
        new Matrix(scale, 0, 0, scale, (float) figure.x(), (float) (pageHeight - figure.y())));
    for (Shape shape : figure.picture().shapes()) {
      if (shape instanceof Shape.Path path) {
        path(path);
      } else if (shape instanceof Shape.Area area) {
        outline(area.points());
        content.setNonStrokingColor(grey(area.grey()));
        content.fill();
      } else if (shape instanceof Shape.Label label) {
        label(label);
      }
    }
    content.restoreGraphicsState();
  }

  private void path(Shape.Path path) throws IOException {
    List<Double> dashes = path.stroke().dashes();
    float[] lengths = new float[dashes.size()];
    for (int i = 0; i < lengths.length; i++) {
      lengths[i] = dashes.get(i).floatValue();
    }
    content.setLineDashPattern(lengths, 0);
    content.setLineWidth((float) path.stroke().width());
    content.setStrokingColor(grey(path.stroke().grey()));
    outline(path.points());
    content.stroke();
  }

  private void outline(List<Shape.Point> points) throws IOException {
    content.moveTo((float) points.get(0).x(), (float) -points.get(0).y());
    for (Shape.Point point : points.subList(1, points.size())) {
      content.lineTo((float) point.x(), (float) -point.y());
    }
  }

  private void label(Shape.Label label) throws IOException {
    String text = lettering.printable(label.text());
    if (text.isEmpty()) {
      return;
    }
    double width = lettering.width(text, label.size());
    double back =
        switch (label.anchor()) {
          case START -> 0;
          case MIDDLE -> width / 2;
          case END -> width;
        };
    float x = (float) label.at().x();
    float y = (float) -label.at().y();
    content.setNonStrokingColor(0f);
    content.beginText();
    content.setFont(font, (float) label.size());
    content.setTextMatrix(
        label.turned()
            ? new Matrix(0, 1, -1, 0, x, y - (float) back)
            : new Matrix(1, 0, 0, 1, x - (float) back, y));
    content.showText(text);
    content.endText();
  }

  private static float grey(double grey) {
    return (float) Math.max(0, Math.min(1, grey));
  }
}
