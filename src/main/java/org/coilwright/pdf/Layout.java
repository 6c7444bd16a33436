package org.coilwright.pdf;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.checklist.Checklist;
import org.coilwright.checklist.FilledIn;
import org.coilwright.checklist.TestRecord;
import org.coilwright.checklist.Texts;

/** A checklist laid out: pieces on pages, the reading order, the bookmarks. */
record Layout(
    double pageWidth,
    double pageHeight,
    List<List<Piece>> pages,
    Tag document,
    List<Prose.Bookmark> bookmarks) {
  private static final double RUNNING_LEADING = 12;
  private static final int HEAD_LINES = 2;
  private static final double FOOT_DEPTH = 18;

  /**
   * Lays a checklist out.
   *
   * @param record what is printed in the frames and before them; empty if they are still to be
   *     filled in
   */
  static Layout of(Checklist checklist, Faces faces, Optional<TestRecord> record) {
    double width = checklist.paper().width();
    double height = checklist.paper().height();
    List<String> head = runningHead(checklist, faces, width);
    double headDepth = head.size() * RUNNING_LEADING + 6;
    Optional<FilledIn> filledIn = record.map(r -> withSignatures(r.filledIn(), checklist.texts()));
    Sheet sheet = new Sheet(width, height, headDepth, FOOT_DEPTH, filledIn);
    Tag document = Tag.document();
    Prose prose = new Prose(sheet, faces, document);
    Pages.Press press = new Pages.Press(sheet, faces, prose, document, checklist.texts());
    record.ifPresent(r -> new RecordPages(press).draw(r));
    new FrontPages(press).draw(checklist);
    new TestPages(press).draw(checklist);
    new SignOffPages(press).draw(checklist);
    if (record.isEmpty() && checklist.parts().contains(Checklist.Part.ANNEX)) {
      new AnnexPages(press).draw(checklist);
    }
    if (record.isEmpty() && checklist.parts().contains(Checklist.Part.ARCHIVE)) {
      new ArchivePages(press).draw(checklist);
    }
    drawRunningLines(sheet, checklist, head, faces);
    return new Layout(width, height, sheet.pages(), document, prose.bookmarks());
  }

  /** A signature by certificate cannot be drawn anew; that it is in the filled-in file is said. */
  private static FilledIn withSignatures(FilledIn filledIn, Texts texts) {
    Map<String, String> shown = new HashMap<>(filledIn.texts());
    filledIn.signed().forEach(name -> shown.put(name, texts.of("record.signed")));
    return new FilledIn(shown, filledIn.ticked(), filledIn.disputed(), filledIn.signed());
  }

  /** The whole title stands on the first page; here it may end in an ellipsis. */
  private static List<String> runningHead(Checklist checklist, Faces faces, double pageWidth) {
    double room = pageWidth - Sheet.LEFT_MARGIN - Sheet.OTHER_MARGIN;
    Checklist.TitleBlock title = checklist.title();
    String key = checklist.isStopped() ? "page.head-stop" : "page.head";
    String text = checklist.texts().of(key, title.circuit(), title.reference(), title.revision());
    List<String> lines = Wrapping.lines(text, faces.regular(), Type.FOOT, room - 12);
    if (lines.size() <= HEAD_LINES) {
      return lines;
    }
    return List.of(lines.get(0), lines.get(1) + " …");
  }

  private static void drawRunningLines(
      Sheet sheet, Checklist checklist, List<String> head, Faces faces) {
    Checklist.TitleBlock title = checklist.title();
    String identity =
        checklist.texts().of("page.foot", title.shortDigest(), title.program(), title.printed());
    double footLine = sheet.bottom() + 5;
    for (int page = 0; page < sheet.pages().size(); page++) {
      List<Piece> pieces = sheet.pages().get(page);
      double y = Sheet.OTHER_MARGIN + Type.FOOT;
      for (String line : head) {
        pieces.add(running(sheet.left(), y, line));
        y += RUNNING_LEADING;
      }
      double headLine = sheet.top() - 5;
      pieces.add(new Piece.Rule(sheet.left(), headLine, sheet.right(), headLine, Type.HAIRLINE));
      pieces.add(new Piece.Rule(sheet.left(), footLine, sheet.right(), footLine, Type.HAIRLINE));
      String number = checklist.texts().of("page.number", page + 1, sheet.pages().size());
      double numberWidth = faces.regular().width(number, Type.FOOT);
      double room = sheet.width() - numberWidth - 12;
      String left = Wrapping.lines(identity, faces.regular(), Type.FOOT, room).get(0);
      pieces.add(running(sheet.left(), footLine + 11, left));
      pieces.add(running(sheet.right() - numberWidth, footLine + 11, number));
    }
  }

  private static Piece running(double x, double baseline, String text) {
    return new Piece.Text(x, baseline, Type.FOOT, Face.REGULAR, text, Tag.ARTIFACT);
  }
}
