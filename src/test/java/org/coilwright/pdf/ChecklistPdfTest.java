// Over 250 lines: one thing that a page must hold after the other.
package org.coilwright.pdf;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.coilwright.checklist.Checked;
import org.coilwright.checklist.Checklist;
import org.coilwright.checklist.Expected;
import org.coilwright.checklist.Manner;
import org.coilwright.checklist.Section;
import org.coilwright.checklist.TestLine;
import org.coilwright.checklist.TestRow;
import org.coilwright.checklist.Texts;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ChecklistPdfTest {
  private static final Faces FACES = Faces.load();

  static Stream<Checklist> samples() {
    return Stream.of(
        SampleChecklists.ordinary(),
        SampleChecklists.letter(),
        SampleChecklists.longNames(),
        SampleChecklists.manyWires(),
        SampleChecklists.bare(),
        Checked.example("wash-room-tub"),
        Checked.example("guest-house-cylinder"),
        Checked.example("cabin-water-heater"),
        Checked.example("attic-mistakes"));
  }

  @ParameterizedTest
  @MethodSource("samples")
  void every_text_of_the_checklist_can_be_found_in_the_pages(Checklist checklist)
      throws IOException {
    String found = squeezed(text(checklist));
    for (String wanted : texts(checklist)) {
      assertTrue(found.contains(squeezed(wanted)), () -> "not in the pages: " + wanted);
    }
  }

  @ParameterizedTest
  @MethodSource("samples")
  void nothing_stands_outside_the_margins(Checklist checklist) throws IOException {
    double height = checklist.paper() == Checklist.Paper.LETTER ? 792 : 841.89;
    double width = checklist.paper() == Checklist.Paper.LETTER ? 612 : 595.276;
    for (Glyph glyph : glyphs(checklist)) {
      assertTrue(glyph.left() >= Sheet.LEFT_MARGIN - 0.1, glyph::toString);
      assertTrue(glyph.right() <= width - Sheet.OTHER_MARGIN + 0.1, glyph::toString);
      assertTrue(glyph.top() >= Sheet.OTHER_MARGIN - 0.1, glyph::toString);
      assertTrue(glyph.baseline() <= height - Sheet.OTHER_MARGIN + 0.1, glyph::toString);
    }
  }

  @ParameterizedTest
  @MethodSource("samples")
  void no_character_stands_on_another(Checklist checklist) throws IOException {
    List<Glyph> glyphs = glyphs(checklist);
    for (int i = 0; i < glyphs.size(); i++) {
      for (int j = i + 1; j < Math.min(glyphs.size(), i + 900); j++) {
        Glyph a = glyphs.get(i);
        Glyph b = glyphs.get(j);
        assertTrue(a.clearOf(b), () -> a + " stands on " + b);
      }
    }
  }

  @ParameterizedTest
  @MethodSource("samples")
  void body_text_is_never_smaller_than_ten_points(Checklist checklist) {
    for (List<Piece> page : Layout.of(checklist, FACES, Optional.empty()).pages()) {
      for (Piece piece : page) {
        if (piece instanceof Piece.Text text) {
          double least = text.tag() == Tag.ARTIFACT ? Type.FOOT : 10;
          assertTrue(text.size() >= least, text::text);
        }
      }
    }
  }

  @ParameterizedTest
  @MethodSource("samples")
  void frames_and_rules_stay_clear_of_text_and_edge(Checklist checklist) {
    Layout layout = Layout.of(checklist, FACES, Optional.empty());
    for (List<Piece> page : layout.pages()) {
      for (Piece piece : page) {
        if (piece instanceof Piece.Frame frame) {
          assertTrue(frame.x() + frame.width() <= layout.pageWidth() - Sheet.OTHER_MARGIN + 0.1);
          assertTrue(frame.y() + frame.height() <= layout.pageHeight() - Sheet.OTHER_MARGIN);
          boolean toWriteIn = frame.width() < 200 && frame.height() < 100;
          if (toWriteIn) {
            assertTrue(page.stream().noneMatch(other -> crosses(frame, other)), frame::toString);
          }
        }
      }
    }
  }

  private static boolean crosses(Piece.Frame frame, Piece other) {
    if (other instanceof Piece.Text text) {
      double right = text.x() + FACES.of(text.face()).width(text.text(), text.size());
      return text.x() < frame.x() + frame.width()
          && right > frame.x()
          && text.baseline() - 0.7 * text.size() < frame.y() + frame.height()
          && text.baseline() > frame.y();
    }
    if (other instanceof Piece.Frame second && other != frame && second.width() < 200) {
      return second.x() < frame.x() + frame.width()
          && second.x() + second.width() > frame.x()
          && second.y() < frame.y() + frame.height()
          && second.y() + second.height() > frame.y();
    }
    return false;
  }

  @Test
  void a_figure_keeps_to_the_page_and_says_what_it_shows() throws IOException {
    Checklist checklist = SampleChecklists.ordinary();
    Layout layout = Layout.of(checklist, FACES, Optional.empty());
    int drawn = 0;
    for (List<Piece> page : layout.pages()) {
      for (Piece piece : page) {
        if (piece instanceof Piece.Figure figure) {
          drawn++;
          assertTrue(figure.x() + figure.width() <= layout.pageWidth() - Sheet.OTHER_MARGIN + 0.1);
          assertTrue(figure.y() + figure.height() <= layout.pageHeight() - Sheet.OTHER_MARGIN);
          assertEquals(Role.FIGURE, figure.tag().role());
          assertTrue(
              checklist.figures().stream()
                  .anyMatch(f -> f.alternative().equals(figure.tag().alternative())));
        }
      }
    }
    assertEquals(checklist.figures().size(), drawn);
    String text = squeezed(text(checklist));
    assertTrue(text.contains("1kΩ≤2.5mm²") && text.contains("upwards"));
  }

  @Test
  void the_signs_of_the_trade_print_from_the_embedded_font() throws IOException {
    try (PDDocument document = Loader.loadPDF(bytes(SampleChecklists.ordinary()))) {
      assertTrue(new PDFTextStripper().getText(document).contains("Ω ≤ ≥ ± ² ° µ → ☐"));
      for (PDPage page : document.getPages()) {
        PDResources resources = page.getResources();
        for (var name : resources.getFontNames()) {
          assertTrue(resources.getFont(name).isEmbedded(), name::getName);
        }
      }
    }
  }

  @Test
  void a_character_the_font_lacks_is_printed_as_its_number() {
    Lettering lettering = Lettering.of(Face.REGULAR);
    assertEquals("a{U+4E2D}b c", lettering.printable("a中b\tc"));
    assertEquals("Ω", lettering.printable("\u2126"));
  }

  @ParameterizedTest
  @MethodSource("samples")
  void the_same_checklist_gives_the_same_bytes(Checklist checklist) throws IOException {
    assertArrayEquals(bytes(checklist), bytes(checklist));
  }

  @Test
  void the_table_head_is_repeated_on_every_page_of_the_wiring_list() throws IOException {
    try (PDDocument document = Loader.loadPDF(bytes(SampleChecklists.manyWires()))) {
      int pages = 0;
      for (int page = 1; page <= document.getNumberOfPages(); page++) {
        String text = page(document, page);
        if (text.contains("K1.A1 X1.")) {
          pages++;
          assertTrue(text.contains("Tight"), "page " + page + " has no head");
        }
      }
      assertTrue(pages > 5, "300 wires need many pages, not " + pages);
    }
  }

  @Test
  void every_page_says_which_it_is_and_of_what() throws IOException {
    try (PDDocument document = Loader.loadPDF(bytes(SampleChecklists.ordinary()))) {
      int count = document.getNumberOfPages();
      for (int page = 1; page <= count; page++) {
        String text = page(document, page);
        assertTrue(text.contains("page " + page + " of " + count));
        assertTrue(text.contains("SHA-256 0123456789ab"));
        assertTrue(text.contains("KR-7"));
      }
    }
  }

  @Test
  void the_notice_stands_on_the_first_and_on_the_sign_off_page() throws IOException {
    String notice = "Local code and the licensed electrician decide";
    try (PDDocument document = Loader.loadPDF(bytes(SampleChecklists.ordinary()))) {
      assertTrue(page(document, 1).contains(notice));
      boolean signOff = false;
      for (int page = 2; page <= document.getNumberOfPages(); page++) {
        String text = page(document, page);
        if (text.contains("Mended and done again")) {
          signOff = true;
          assertTrue(text.contains(notice));
        }
      }
      assertTrue(signOff);
    }
  }

  @Test
  void title_language_and_bookmarks_are_there() throws IOException {
    try (PDDocument document = Loader.loadPDF(bytes(SampleChecklists.ordinary()))) {
      assertEquals(
          "Checklist: Test bench, kiln room", document.getDocumentInformation().getTitle());
      assertEquals("en", document.getDocumentCatalog().getLanguage());
      List<String> titles = new ArrayList<>();
      document
          .getDocumentCatalog()
          .getDocumentOutline()
          .children()
          .forEach(i -> titles.add(i.getTitle()));
      assertTrue(
          titles.containsAll(
              List.of(
                  "Findings",
                  "1 Dead: wires",
                  "Mended and done again; signatures",
                  "Annex for owner and planner")),
          titles::toString);
    }
  }

  /** For looking at: writes the samples when asked to. */
  @Test
  void samples_can_be_written_out() throws IOException {
    String folder = System.getProperty("look", "");
    if (!folder.isEmpty()) {
      int number = 0;
      for (Checklist checklist : samples().toList()) {
        Files.write(Path.of(folder, "sample" + number++ + ".pdf"), bytes(checklist));
      }
    }
  }

  static byte[] bytes(Checklist checklist) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ChecklistPdf.write(checklist, List.of(), out);
    return out.toByteArray();
  }

  private static String text(Checklist checklist) throws IOException {
    try (PDDocument document = Loader.loadPDF(bytes(checklist))) {
      // In the order it was written, so that a wrapped cell is one run of text.
      return new PDFTextStripper().getText(document);
    }
  }

  private static String page(PDDocument document, int number) throws IOException {
    PDFTextStripper stripper = new PDFTextStripper();
    stripper.setStartPage(number);
    stripper.setEndPage(number);
    return stripper.getText(document);
  }

  private static String squeezed(String text) {
    return text.replaceAll("\\s+", "");
  }

  private static List<String> texts(Checklist checklist) {
    List<String> all = new ArrayList<>();
    Checklist.TitleBlock title = checklist.title();
    all.add(title.circuit());
    all.add(title.sha256());
    all.add(title.note());
    checklist.findings().forEach(f -> all.addAll(List.of(f.headline(), f.numbers(), f.remedy())));
    checklist.openPoints().forEach(p -> all.add(p.what()));
    checklist.cautions().forEach(c -> all.addAll(c.paragraphs()));
    checklist.wires().forEach(w -> all.addAll(List.of(w.number(), w.from(), w.to(), w.size())));
    checklist.steps().stream()
        .filter(Section.class::isInstance)
        .flatMap(step -> ((Section) step).lines().stream())
        .forEach(line -> all.addAll(texts(line, checklist.texts())));
    if (checklist.parts().contains(Checklist.Part.ARCHIVE)) {
      checklist.satisfied().forEach(s -> all.addAll(List.of(s.rule(), s.title(), s.value())));
    }
    checklist.broken().forEach(b -> all.addAll(List.of(b.harm(), b.what(), b.then(), b.stops())));
    return all;
  }

  private static List<String> texts(TestLine line, Texts texts) {
    TestRow first = line.first();
    List<String> all = new ArrayList<>(List.of(first.number()));
    if (line.isShared()) {
      all.add("–" + line.rows().get(line.rows().size() - 1).number());
      all.add(first.action());
    }
    for (TestRow row : line.rows()) {
      String expected = row.expected().text(texts);
      if (!row.wire().isEmpty()) {
        // the list has its pins, run and colour in columns
        all.add(expected);
      } else if (line.isShared()) {
        all.addAll(List.of(row.label(), line.ticksAlone(row) ? "" : expected));
      } else if (row.expected() instanceof Expected.Setting setting) {
        all.add(setting.value());
        all.add(row.manner() == Manner.LISTED ? row.action() : row.label());
      } else {
        all.addAll(List.of(row.action(), row.where(), row.condition(), expected));
      }
      if (row.manner() != Manner.DONE) {
        // what is taken off or put back has no box for what came out otherwise
        all.add(row.otherwise());
      }
    }
    return all;
  }

  /** A printed character; y downwards. */
  record Glyph(int page, String character, double left, double right, double top, double baseline) {
    boolean clearOf(Glyph other) {
      double slack = 0.4;
      return page != other.page
          || left >= other.right - slack
          || other.left >= right - slack
          || top >= other.baseline - slack
          || other.top >= baseline - slack;
    }
  }

  private static List<Glyph> glyphs(Checklist checklist) throws IOException {
    List<Glyph> glyphs = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(bytes(checklist))) {
      PDFTextStripper stripper =
          new PDFTextStripper() {
            @Override
            protected void writeString(String text, List<TextPosition> positions) {
              for (TextPosition p : positions) {
                if (!p.getUnicode().isBlank()) {
                  double x = p.getX();
                  double y = p.getY();
                  double high = 0.73 * p.getFontSizeInPt();
                  double wide = p.getWidthDirAdj();
                  boolean turned = p.getDir() == 90;
                  glyphs.add(
                      new Glyph(
                          getCurrentPageNo(),
                          p.getUnicode(),
                          turned ? x - high : x,
                          turned ? x : x + wide,
                          turned ? y - wide : y - high,
                          y));
                }
              }
            }
          };
      stripper.getText(document);
    }
    return glyphs;
  }
}
