package org.coilwright.pdf;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.encryption.InvalidPasswordException;

/**
 * Opens a PDF that somebody gave back. It may come from any program or be made to do harm: nothing
 * in it is run, what it unpacks is bounded, and whatever is not as expected is said.
 */
public final class SheetReader {
  private static final String AGAIN = "fill in the sheet as coilwright wrote it";

  private static final int MOST_BEFORE = 1024;
  private static final byte[] END = "%%EOF".getBytes(StandardCharsets.US_ASCII);

  private SheetReader() {}

  /** Reads. Never throws because of what the bytes hold. */
  public static Returned read(byte[] pdf) {
    if (!isPdf(pdf)) {
      return new Returned.Unusable("it is no PDF", "name the PDF that was filled in");
    }
    if (!isWhole(pdf)) {
      return new Returned.Unusable(
          "it is cut off", "take the file as the program that filled it in saved it");
    }
    try {
      Unpacking.refuse(pdf);
    } catch (Unfit e) {
      return new Returned.Unusable(e.what(), e.remedy());
    }
    try (PDDocument document = Loader.loadPDF(pdf)) {
      if (document.isEncrypted()) {
        return encrypted();
      }
      return read(document);
    } catch (InvalidPasswordException e) {
      return encrypted();
    } catch (Unfit e) {
      return new Returned.Unusable(e.what(), e.remedy());
    } catch (IOException
        | RuntimeException // the library's, at objects of unexpected types
        | StackOverflowError
        | OutOfMemoryError e) {
      return new Returned.Unusable(
          "it is damaged, or no PDF", "take the file as the program that filled it in saved it");
    }
  }

  /** Some programs and servers put a little before the beginning. */
  private static boolean isPdf(byte[] pdf) {
    String start =
        new String(pdf, 0, Math.min(pdf.length, MOST_BEFORE), StandardCharsets.ISO_8859_1);
    return start.contains("%PDF-");
  }

  /**
   * A file that was cut off can often still be read, but as it was before the last changes: they
   * stand at the end.
   */
  private static boolean isWhole(byte[] pdf) {
    int end = pdf.length;
    while (end > 0 && Character.isWhitespace(pdf[end - 1])) {
      end--;
    }
    return end >= END.length && Arrays.equals(pdf, end - END.length, end, END, 0, END.length);
  }

  private static Returned encrypted() {
    return new Returned.Unusable(
        "it is encrypted", "save it without a password and without restrictions");
  }

  private static Returned read(PDDocument document) throws IOException, Unfit {
    PackedObjects.refuse(document.getDocument());
    Scripts.refuse(document.getDocument());
    COSDictionary catalog = document.getDocumentCatalog().getCOSObject();
    Map<String, byte[]> files = AttachmentReader.files(catalog);
    FieldReader fields = new FieldReader();
    Optional<COSDictionary> form = Optional.ofNullable(catalog.getCOSDictionary(COSName.ACRO_FORM));
    if (form.isPresent()) {
      if (form.get().containsKey(COSName.XFA)) {
        throw new Unfit("it holds a second form of another kind (XFA)", AGAIN);
      }
      fields.read(form.get());
    }
    String keywords =
        Optional.ofNullable(document.getDocumentInformation().getKeywords()).orElse("");
    return new Returned.Sheet(fields.kinds(), fields.filledIn(), files, keywords);
  }
}
