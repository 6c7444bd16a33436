package org.coilwright.pdf;

/** What a drawn piece is to somebody who cannot see the page. Names are those of PDF 1.7. */
enum Role {
  DOCUMENT("Document"),
  HEADING_1("H1"),
  HEADING_2("H2"),
  PARAGRAPH("P"),
  TABLE("Table"),
  ROW("TR"),
  HEAD_CELL("TH"),
  CELL("TD"),
  FIGURE("Figure"),
  /** Words in another language. */
  SPAN("Span"),
  /** Holds one place to fill in and nothing else. */
  FORM("Form"),
  /** Rules, boxes, running heads and repeated table heads: not part of what is read out. */
  ARTIFACT("Artifact");

  private final String pdfName;

  Role(String pdfName) {
    this.pdfName = pdfName;
  }

  String pdfName() {
    return pdfName;
  }
}
