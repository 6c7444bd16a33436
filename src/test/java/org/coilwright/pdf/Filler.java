package org.coilwright.pdf;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.function.UnaryOperator;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.form.PDAcroForm;
import org.apache.pdfbox.pdmodel.interactive.form.PDCheckBox;
import org.apache.pdfbox.pdmodel.interactive.form.PDField;
import org.coilwright.checklist.FilledIn;

/** Fills a form in, or spoils a file, as somebody else's program would. */
public final class Filler {
  private Filler() {}

  /** Something done to a document. */
  interface Change {
    void to(PDDocument document) throws IOException;
  }

  static byte[] changed(byte[] pdf, Change change) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (PDDocument document = Loader.loadPDF(pdf)) {
      change.to(document);
      document.save(out);
    }
    return out.toByteArray();
  }

  /** With everything in its place. */
  public static byte[] filled(byte[] pdf, FilledIn filledIn) throws IOException {
    return changed(
        pdf,
        document -> {
          PDAcroForm form = document.getDocumentCatalog().getAcroForm(null);
          for (PDField field : form.getFieldTree()) {
            String name = field.getFullyQualifiedName();
            if (filledIn.texts().containsKey(name)) {
              field.setValue(filledIn.texts().get(name));
            } else if (filledIn.ticked().contains(name)) {
              ((PDCheckBox) field).check();
            }
          }
        });
  }

  /** With one text more or another one. */
  public static byte[] with(byte[] pdf, String field, String text) throws IOException {
    return changed(
        pdf,
        document -> document.getDocumentCatalog().getAcroForm(null).getField(field).setValue(text));
  }

  /** With a text whose appearance nobody drew, so that it may hold anything. */
  public static byte[] withRaw(byte[] pdf, String field, String text) throws IOException {
    return changed(
        pdf,
        document -> {
          PDAcroForm form = document.getDocumentCatalog().getAcroForm(null);
          form.getField(field).getCOSObject().setString(COSName.V, text);
          form.setNeedAppearances(true);
        });
  }

  /** With other results attached. */
  public static byte[] withResults(byte[] pdf, UnaryOperator<String> change) throws IOException {
    return withAttached(pdf, "coilwright-results.json", change);
  }

  /** With another file attached under the same name. */
  public static byte[] withAttached(byte[] pdf, String name, UnaryOperator<String> change)
      throws IOException {
    return changed(
        pdf,
        document -> {
          COSArray files = document.getDocumentCatalog().getCOSObject().getCOSArray(COSName.AF);
          for (int i = 0; i < files.size(); i++) {
            COSDictionary file = (COSDictionary) files.getObject(i);
            if (name.equals(file.getString(COSName.UF))) {
              COSStream stream = file.getCOSDictionary(COSName.EF).getCOSStream(COSName.UF);
              String text;
              try (var in = stream.createInputStream()) {
                text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
              }
              String other = change.apply(text);
              if (other.equals(text)) {
                throw new AssertionError("nothing was changed in " + name);
              }
              try (OutputStream out = stream.createOutputStream(COSName.FLATE_DECODE)) {
                out.write(other.getBytes(StandardCharsets.UTF_8));
              }
            }
          }
        });
  }
}
