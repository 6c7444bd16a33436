package org.coilwright.pdf;

import java.io.IOException;
import java.text.Normalizer;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.contentstream.PDContentStream;
import org.apache.pdfbox.contentstream.PDFStreamEngine;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.contentstream.operator.state.Restore;
import org.apache.pdfbox.contentstream.operator.state.Save;
import org.apache.pdfbox.contentstream.operator.state.SetMatrix;
import org.apache.pdfbox.contentstream.operator.text.BeginText;
import org.apache.pdfbox.contentstream.operator.text.EndText;
import org.apache.pdfbox.contentstream.operator.text.MoveText;
import org.apache.pdfbox.contentstream.operator.text.MoveTextSetLeading;
import org.apache.pdfbox.contentstream.operator.text.NextLine;
import org.apache.pdfbox.contentstream.operator.text.SetFontAndSize;
import org.apache.pdfbox.contentstream.operator.text.ShowText;
import org.apache.pdfbox.contentstream.operator.text.ShowTextAdjusted;
import org.apache.pdfbox.contentstream.operator.text.ShowTextLine;
import org.apache.pdfbox.contentstream.operator.text.ShowTextLineAndSpace;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.util.Matrix;
import org.apache.pdfbox.util.Vector;

/**
 * The letters that a page or a field draws, in the order of drawing and without blanks. Forms
 * within it are not entered, and no more than so many operators are obeyed.
 */
final class ShownText extends PDFStreamEngine {
  private static final int MOST_OPERATORS = 500_000;

  private final StringBuilder text = new StringBuilder();
  private int operators;
  private boolean readable = true;

  private ShownText() {
    addOperator(new Save(this));
    addOperator(new Restore(this));
    addOperator(new BeginText(this));
    addOperator(new EndText(this));
    addOperator(new SetFontAndSize(this));
    addOperator(new MoveText(this));
    addOperator(new MoveTextSetLeading(this));
    addOperator(new SetMatrix(this));
    addOperator(new NextLine(this));
    addOperator(new ShowText(this));
    addOperator(new ShowTextAdjusted(this));
    addOperator(new ShowTextLine(this));
    addOperator(new ShowTextLineAndSpace(this));
  }

  /** What is written on a page; empty if it cannot be read. */
  static Optional<String> of(PDPage page) {
    ShownText shown = new ShownText();
    try {
      shown.processPage(page);
      return Optional.of(shown.text());
    } catch (IOException | RuntimeException e) { // the library's, at objects of unexpected types
      return Optional.empty();
    }
  }

  /** What is written in the appearance of a field; empty if it cannot be read. */
  static Optional<String> of(PDContentStream appearance, PDPage page) {
    ShownText shown = new ShownText();
    try {
      shown.processChildStream(appearance, page);
      return shown.readable ? Optional.of(shown.text()) : Optional.empty();
    } catch (IOException | RuntimeException e) { // likewise
      return Optional.empty();
    }
  }

  /** A text as it is compared: without blanks, and signs that look the same are the same. */
  static String plain(String text) {
    return Normalizer.normalize(text, Normalizer.Form.NFKC)
        .replaceAll("[\\s\\p{Z}\\p{Cntrl}\u200b]+", "");
  }

  private String text() {
    return plain(text.toString());
  }

  @Override
  protected void processOperator(Operator operator, List<COSBase> operands) throws IOException {
    operators++;
    if (operators > MOST_OPERATORS) {
      throw new IOException("more is drawn than on any sheet");
    }
    super.processOperator(operator, operands);
  }

  @Override
  protected void showGlyph(Matrix where, PDFont font, int code, Vector displacement)
      throws IOException {
    String letter = font.toUnicode(code);
    if (letter == null) {
      readable = false;
    } else {
      text.append(letter);
    }
  }
}
