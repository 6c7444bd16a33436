package org.coilwright.pdf;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSFloat;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.pdfwriter.compress.CompressParameters;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.encryption.AccessPermission;
import org.apache.pdfbox.pdmodel.encryption.StandardProtectionPolicy;
import org.apache.pdfbox.pdmodel.interactive.form.PDAcroForm;
import org.apache.pdfbox.pdmodel.interactive.form.PDField;
import org.apache.pdfbox.pdmodel.interactive.form.PDNonTerminalField;

/** Makes files as nobody should give them back. */
public final class Spoiler {
  private Spoiler() {}

  /** The same objects in plain text, which a change of a byte reaches. */
  public static byte[] uncompressed(byte[] pdf) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (PDDocument document = Loader.loadPDF(pdf)) {
      document.save(out, CompressParameters.NO_COMPRESSION);
    }
    return out.toByteArray();
  }

  /** Form and attached files alone, as plain text: what a reader of sheets looks at. */
  public static byte[] essence(byte[] pdf) throws IOException {
    return uncompressed(
        Filler.changed(
            pdf,
            document -> {
              for (PDPage page : document.getPages()) {
                page.getCOSObject().removeItem(COSName.CONTENTS);
                page.getCOSObject().removeItem(COSName.RESOURCES);
              }
              COSDictionary catalog = document.getDocumentCatalog().getCOSObject();
              for (COSName rest :
                  new COSName[] {
                    COSName.STRUCT_TREE_ROOT,
                    COSName.METADATA,
                    COSName.OUTLINES,
                    COSName.OUTPUT_INTENTS
                  }) {
                catalog.removeItem(rest);
              }
              form(document).getCOSObject().removeItem(COSName.DR);
            }));
  }

  /** Encrypted; {@code password} may be empty, so that every viewer opens it. */
  public static byte[] encrypted(byte[] pdf, String password) throws IOException {
    return Filler.changed(
        pdf,
        document ->
            document.protect(
                new StandardProtectionPolicy("owner", password, new AccessPermission())));
  }

  /** A page with nothing on it. */
  public static byte[] blank() throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (PDDocument document = new PDDocument()) {
      document.addPage(new PDPage());
      document.save(out);
    }
    return out.toByteArray();
  }

  private static COSDictionary action(String type) {
    COSDictionary action = new COSDictionary();
    action.setName(COSName.S, type);
    action.setItem(COSName.JS, new COSString("app.alert('run')"));
    return action;
  }

  /** With an action when the file is opened. */
  public static byte[] openAction(byte[] pdf, String type) throws IOException {
    return Filler.changed(
        pdf,
        document ->
            document
                .getDocumentCatalog()
                .getCOSObject()
                .setItem(COSName.OPEN_ACTION, action(type)));
  }

  /** With a script at every change of a field. */
  public static byte[] fieldScript(byte[] pdf, String field) throws IOException {
    return Filler.changed(
        pdf,
        document -> {
          COSDictionary actions = new COSDictionary();
          actions.setItem(COSName.K, action("JavaScript"));
          field(document, field).getCOSObject().setItem(COSName.AA, actions);
        });
  }

  /** With a second form behind the form. */
  public static byte[] xfa(byte[] pdf) throws IOException {
    return Filler.changed(
        pdf,
        document ->
            form(document).getCOSObject().setItem(COSName.getPDFName("XFA"), new COSArray()));
  }

  /** Without a field. */
  public static byte[] without(byte[] pdf, String field) throws IOException {
    return Filler.changed(
        pdf, document -> siblings(document, field).remove(child(document, field)));
  }

  /** With a field twice. */
  public static byte[] twice(byte[] pdf, String field) throws IOException {
    return Filler.changed(
        pdf,
        document -> {
          COSDictionary copy = new COSDictionary(field(document, field).getCOSObject());
          siblings(document, field).add(copy);
        });
  }

  /** With a field that hangs below itself. */
  public static byte[] endless(byte[] pdf, String field) throws IOException {
    return Filler.changed(
        pdf, document -> siblings(document, field).add(parent(document, field).getCOSObject()));
  }

  /** With an entry of a field changed. */
  public static byte[] entry(byte[] pdf, String field, String key, COSBase value)
      throws IOException {
    return Filler.changed(
        pdf,
        document -> field(document, field).getCOSObject().setItem(COSName.getPDFName(key), value));
  }

  /** A number where a text should be. */
  public static COSBase number() {
    return new COSFloat(650);
  }

  /** A name. */
  public static COSBase name(String name) {
    return COSName.getPDFName(name);
  }

  /** A text of so many characters. */
  public static COSBase text(int length) {
    return new COSString("x".repeat(length));
  }

  /** Without its attached files. */
  public static byte[] withoutFiles(byte[] pdf) throws IOException {
    return Filler.changed(
        pdf,
        document -> {
          document.getDocumentCatalog().getCOSObject().removeItem(COSName.AF);
          document.getDocumentCatalog().setNames(null);
        });
  }

  /** With an attached file that unpacks to far more than it should. */
  public static byte[] bomb(byte[] pdf, int megabytes) throws IOException {
    return Filler.changed(
        pdf,
        document -> {
          COSArray files = document.getDocumentCatalog().getCOSObject().getCOSArray(COSName.AF);
          COSStream stream =
              ((COSDictionary) files.getObject(0))
                  .getCOSDictionary(COSName.EF)
                  .getCOSStream(COSName.UF);
          byte[] megabyte = new byte[1 << 20];
          try (OutputStream out = stream.createOutputStream(COSName.FLATE_DECODE)) {
            for (int i = 0; i < megabytes; i++) {
              new ByteArrayInputStream(megabyte).transferTo(out);
            }
          }
        });
  }

  private static PDAcroForm form(PDDocument document) {
    return document.getDocumentCatalog().getAcroForm(null);
  }

  private static PDField field(PDDocument document, String name) {
    return form(document).getField(name);
  }

  private static PDNonTerminalField parent(PDDocument document, String name) {
    return field(document, name).getParent();
  }

  private static COSArray siblings(PDDocument document, String name) {
    return parent(document, name).getCOSObject().getCOSArray(COSName.KIDS);
  }

  private static COSBase child(PDDocument document, String name) {
    COSArray siblings = siblings(document, name);
    COSDictionary wanted = field(document, name).getCOSObject();
    for (int i = 0; i < siblings.size(); i++) {
      if (siblings.getObject(i) == wanted) {
        return siblings.get(i);
      }
    }
    throw new AssertionError("no child " + name);
  }
}
