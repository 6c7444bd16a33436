package org.coilwright.pdf;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDType1Font;
import org.apache.pdfbox.pdmodel.font.Standard14Fonts;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationSquare;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationWidget;
import org.apache.pdfbox.pdmodel.interactive.form.PDField;

/** Forges sheets and records as somebody would who means harm. */
public final class Forger {
  private Forger() {}

  /** Changed behind its end: every byte that was there stays. */
  static byte[] appended(byte[] pdf, Filler.Change change) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (PDDocument document = Loader.loadPDF(pdf)) {
      change.to(document);
      document.saveIncremental(out);
    }
    byte[] forged = out.toByteArray();
    if (forged.length <= pdf.length || !Arrays.equals(pdf, Arrays.copyOf(forged, pdf.length))) {
      throw new AssertionError("nothing was appended");
    }
    return forged;
  }

  /** With other files attached under their names, behind the end of the file. */
  public static byte[] withFiles(byte[] pdf, Map<String, byte[]> files, Optional<String> keywords)
      throws IOException {
    return appended(
        pdf,
        document -> {
          COSDictionary catalog = document.getDocumentCatalog().getCOSObject();
          COSArray associated = catalog.getCOSArray(COSName.AF);
          int replaced = 0;
          for (int i = 0; i < associated.size(); i++) {
            COSDictionary file = (COSDictionary) associated.getObject(i);
            byte[] bytes = files.get(file.getString(COSName.UF));
            if (bytes != null) {
              COSStream stream = file.getCOSDictionary(COSName.EF).getCOSStream(COSName.UF);
              try (OutputStream out = stream.createOutputStream(COSName.FLATE_DECODE)) {
                out.write(bytes);
              }
              stream.setNeedToBeUpdated(true);
              replaced++;
            }
          }
          if (replaced != files.size()) {
            throw new AssertionError("not every file was there");
          }
          if (keywords.isPresent()) {
            String stated = keywords.get().isEmpty() ? null : keywords.get();
            document.getDocumentInformation().setKeywords(stated);
            document.getDocumentInformation().getCOSObject().setNeedToBeUpdated(true);
          }
        });
  }

  /** With nothing on any page but its fields. */
  public static byte[] blankPages(byte[] pdf) throws IOException {
    return Filler.changed(
        pdf,
        document ->
            document.getPages().forEach(page -> page.getCOSObject().removeItem(COSName.CONTENTS)));
  }

  /** Without some of its attached files. */
  public static byte[] withoutFiles(byte[] pdf, String... names) throws IOException {
    return Filler.changed(
        pdf,
        document -> {
          COSArray files = document.getDocumentCatalog().getCOSObject().getCOSArray(COSName.AF);
          for (int i = files.size() - 1; i >= 0; i--) {
            if (Arrays.asList(names)
                .contains(((COSDictionary) files.getObject(i)).getString(COSName.UF))) {
              files.remove(i);
            }
          }
        });
  }

  /** With something painted over a page. */
  public static byte[] painted(byte[] pdf, int page, String text) throws IOException {
    return appended(pdf, document -> paint(document, document.getPage(page), text));
  }

  /** With every page painted over. */
  public static byte[] paintedAll(byte[] pdf) throws IOException {
    return appended(
        pdf,
        document -> {
          for (PDPage page : document.getPages()) {
            paint(document, page, "");
          }
        });
  }

  private static void paint(PDDocument document, PDPage page, String text) throws IOException {
    try (PDPageContentStream over =
        new PDPageContentStream(
            document, page, PDPageContentStream.AppendMode.APPEND, true, true)) {
      over.setNonStrokingColor(1f);
      over.addRect(0, 300, 600, 450);
      over.fill();
      if (!text.isEmpty()) {
        over.setNonStrokingColor(0f);
        over.beginText();
        over.setFont(new PDType1Font(Standard14Fonts.FontName.HELVETICA), 24);
        over.newLineAtOffset(100, 600);
        over.showText(text);
        over.endText();
      }
    }
    page.getCOSObject().setNeedToBeUpdated(true);
  }

  /** With a comment that covers half of a page. */
  public static byte[] covered(byte[] pdf, int page) throws IOException {
    return appended(
        pdf,
        document -> {
          PDAnnotationSquare square = new PDAnnotationSquare();
          square.setRectangle(new PDRectangle(0, 300, 600, 450));
          document.getPage(page).getAnnotations().add(square);
          document.getPage(page).getCOSObject().setNeedToBeUpdated(true);
        });
  }

  /** With the value of the record's signature taken out. */
  public static byte[] unsigned(byte[] pdf) throws IOException {
    return appended(
        pdf,
        document -> {
          COSDictionary field =
              document
                  .getDocumentCatalog()
                  .getAcroForm(null)
                  .getField("record.signature")
                  .getCOSObject();
          field.removeItem(COSName.V);
          field.setNeedToBeUpdated(true);
        });
  }

  /** With nothing but zeros where the signature was. */
  public static byte[] zeroed(byte[] pdf) throws IOException {
    byte[] zeroed = pdf.clone();
    try (PDDocument document = Loader.loadPDF(pdf)) {
      int[] range = document.getSignatureDictionaries().get(0).getByteRange();
      Arrays.fill(zeroed, range[1] + 1, range[2] - 1, (byte) '0');
    }
    return zeroed;
  }

  /** Saved anew by another program. */
  public static byte[] resaved(byte[] pdf) throws IOException {
    return Filler.changed(pdf, document -> {});
  }

  /** With no field to be seen. */
  public static byte[] hidden(byte[] pdf) throws IOException {
    return Filler.changed(
        pdf,
        document -> {
          for (PDPage page : document.getPages()) {
            for (PDAnnotation annotation : page.getAnnotations()) {
              annotation.setHidden(true);
            }
          }
        });
  }

  /** With no field on any page. */
  public static byte[] withoutWidgets(byte[] pdf) throws IOException {
    return Filler.changed(
        pdf,
        document ->
            document.getPages().forEach(page -> page.getCOSObject().removeItem(COSName.ANNOTS)));
  }

  /** With the first page alone. */
  public static byte[] firstPage(byte[] pdf) throws IOException {
    return Filler.changed(
        pdf,
        document -> {
          for (int page = document.getNumberOfPages() - 1; page > 0; page--) {
            document.removePage(page);
          }
        });
  }

  /** With a field that shows one thing and holds another. */
  public static byte[] showing(byte[] pdf, String field, String shown, String held)
      throws IOException {
    return Filler.changed(
        Filler.with(pdf, field, shown),
        document ->
            document
                .getDocumentCatalog()
                .getAcroForm(null)
                .getField(field)
                .getCOSObject()
                .setString(COSName.V, held));
  }

  /** With a ticked box that stands once more, where it is not ticked. */
  public static byte[] twoBoxes(byte[] pdf, String field) throws IOException {
    return Filler.changed(
        pdf,
        document -> {
          PDField box = document.getDocumentCatalog().getAcroForm(null).getField(field);
          COSDictionary first = box.getCOSObject();
          PDAnnotationWidget widget = box.getWidgets().get(0);
          COSDictionary second = new COSDictionary();
          for (COSName key :
              new COSName[] {COSName.TYPE, COSName.SUBTYPE, COSName.RECT, COSName.AP, COSName.F}) {
            second.setItem(key, first.getItem(key));
          }
          second.setItem(COSName.AS, COSName.Off);
          second.setItem(COSName.PARENT, first);
          COSDictionary shown = new COSDictionary(second);
          shown.setItem(COSName.AS, first.getItem(COSName.AS));
          PDPage page = widget.getPage();
          page.getAnnotations().remove(widget);
          COSArray kids = new COSArray();
          for (COSDictionary place : new COSDictionary[] {shown, second}) {
            kids.add(place);
            page.getAnnotations().add(new PDAnnotationWidget(place));
          }
          first.setItem(COSName.KIDS, kids);
        });
  }
}
