package org.coilwright.pdf;

/**
 * A file inside the PDF.
 *
 * @param name such as {@code boiler.yaml}
 * @param type MIME type
 * @param relation what it is to the sheet
 * @param description one line for whoever lists the files
 * @param bytes what it holds
 */
@SuppressWarnings("ArrayRecordComponent") // handed on, never compared
public record Attachment(
    String name, String type, Relation relation, String description, byte[] bytes) {

  /** What an attached file is to the document, by ISO 19005-3. */
  public enum Relation {
    /** The document was made from it. */
    SOURCE("Source"),
    /** Its figures stand in the document. */
    DATA("Data"),
    /** Shows the same in another form. */
    ALTERNATIVE("Alternative"),
    /** Adds to it. */
    SUPPLEMENT("Supplement");

    private final String pdfName;

    Relation(String pdfName) {
      this.pdfName = pdfName;
    }

    String pdfName() {
      return pdfName;
    }
  }
}
