package org.coilwright.pdf;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.GregorianCalendar;
import java.util.List;
import java.util.Optional;
import java.util.TimeZone;
import java.util.zip.CRC32;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentCatalog;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageXYZDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;
import org.coilwright.checklist.Checklist;
import org.coilwright.checklist.TestRecord;
import org.coilwright.checklist.Texts;

/** Turns laid-out pages into a PDF document. */
final class DocumentWriter {
  private final Faces faces;
  private final Optional<TestRecord> record;

  /**
   * For one document.
   *
   * @param record what came of the tests; empty for a sheet that is still to be filled in
   */
  DocumentWriter(Faces faces, Optional<TestRecord> record) {
    this.faces = faces;
    this.record = record;
  }

  void write(Checklist checklist, Layout layout, List<Attachment> attachments, OutputStream out)
      throws IOException {
    Checklist.TitleBlock title = checklist.title();
    try (PDDocument document = new PDDocument(SmallStreams::new)) {
      CRC32 identity = new CRC32();
      String subject = title.sha256() + title.printed() + record.map(TestRecord::sha256).orElse("");
      identity.update(subject.getBytes(StandardCharsets.UTF_8));
      document.setDocumentId(identity.getValue());
      document.setVersion(1.7f);
      boolean fillable =
          layout.pages().stream().flatMap(List::stream).anyMatch(Piece.Entry.class::isInstance);
      boolean typed = fillable && record.isEmpty();
      PDFont regular = PDType0Font.load(document, faces.regular().font(), !typed);
      PDFont bold = PDType0Font.load(document, faces.bold().font(), true);
      ReadingOrder order = new ReadingOrder();
      FormWriter form = new FormWriter(document, regular, checklist.texts());
      for (int number = 0; number < layout.pages().size(); number++) {
        PDPage page = new PDPage(rectangle(layout));
        document.addPage(page);
        List<Piece> pieces = layout.pages().get(number);
        try (PDPageContentStream content = new PDPageContentStream(document, page)) {
          new PageInk(content, layout.pageHeight(), regular, bold, faces.regular(), order, number)
              .draw(pieces);
        }
        for (Piece piece : pieces) {
          if (piece instanceof Piece.Entry entry) {
            order.widget(entry.tag(), number, form.add(entry, page, layout.pageHeight()));
          }
        }
      }
      order.write(document, layout.document());
      if (fillable) {
        form.finish();
      }
      describe(document, title, checklist.texts());
      bookmark(document, layout);
      new AttachmentWriter(document, midnight(date(title))).write(attachments);
      ByteArrayOutputStream whole = new ByteArrayOutputStream();
      document.save(whole);
      byte[] bytes = whole.toByteArray();
      out.write(record.isPresent() ? bytes : Seal.on(bytes));
    }
  }

  private static PDRectangle rectangle(Layout layout) {
    return new PDRectangle((float) layout.pageWidth(), (float) layout.pageHeight());
  }

  private void describe(PDDocument document, Checklist.TitleBlock title, Texts texts)
      throws IOException {
    PDDocumentInformation information = new PDDocumentInformation();
    String key = record.isPresent() ? "record.document-title" : "document.title";
    information.setTitle(texts.of(key, faces.regular().printable(title.circuit())));
    information.setSubject(
        faces.regular().printable(texts.of("title.revision", title.reference(), title.revision())));
    information.setKeywords("SHA-256 " + title.sha256());
    information.setCreator(title.program());
    information.setProducer(title.program());
    GregorianCalendar printed = midnight(date(title));
    information.setCreationDate(printed);
    information.setModificationDate(printed);
    document.setDocumentInformation(information);
    PDDocumentCatalog catalog = document.getDocumentCatalog();
    catalog.setLanguage(texts.language());
    PDViewerPreferences preferences = new PDViewerPreferences(catalog.getCOSObject());
    preferences.setDisplayDocTitle(true);
    catalog.getCOSObject().setItem(COSName.VIEWER_PREFERENCES, preferences);
    PDMetadata metadata = new PDMetadata(document);
    metadata.importXMPMetadata(Packet.of(information, date(title), texts.language()));
    catalog.setMetadata(metadata);
    catalog.getCOSObject().setItem(COSName.OUTPUT_INTENTS, new COSArray(List.of(intent(document))));
  }

  private String date(Checklist.TitleBlock title) {
    return record.map(TestRecord::readBack).orElse(title.printed());
  }

  /** What the colours of the pages are meant for. */
  private static COSDictionary intent(PDDocument document) throws IOException {
    PDStream profile =
        new PDStream(
            document, new ByteArrayInputStream(ColourProfile.bytes()), COSName.FLATE_DECODE);
    profile.getCOSObject().setInt(COSName.N, 3);
    COSDictionary intent = new COSDictionary();
    intent.setItem(COSName.TYPE, COSName.OUTPUT_INTENT);
    intent.setItem(COSName.S, COSName.GTS_PDFA1);
    intent.setString(COSName.OUTPUT_CONDITION_IDENTIFIER, "RGB, gamma 2.2");
    intent.setString(COSName.INFO, "RGB, gamma 2.2");
    intent.setItem(COSName.DEST_OUTPUT_PROFILE, profile);
    return intent;
  }

  private static GregorianCalendar midnight(String date) {
    GregorianCalendar calendar = new GregorianCalendar(TimeZone.getTimeZone("UTC"));
    calendar.setTimeInMillis(0);
    try {
      calendar.setTimeInMillis(
          LocalDate.parse(date).atStartOfDay().toInstant(ZoneOffset.UTC).toEpochMilli());
    } catch (DateTimeParseException notADate) {
      // Printed as given on the page; the file's own date then stays at the epoch.
    }
    return calendar;
  }

  private static void bookmark(PDDocument document, Layout layout) {
    PDDocumentOutline outline = new PDDocumentOutline();
    for (Prose.Bookmark bookmark : layout.bookmarks()) {
      PDPageXYZDestination destination = new PDPageXYZDestination();
      destination.setPage(document.getPage(bookmark.page()));
      destination.setLeft(0);
      destination.setTop((int) Math.round(layout.pageHeight() - bookmark.y()));
      PDOutlineItem item = new PDOutlineItem();
      item.setTitle(bookmark.title());
      item.setDestination(destination);
      outline.addLast(item);
    }
    document.getDocumentCatalog().setDocumentOutline(outline);
  }
}
