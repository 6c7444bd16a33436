// Over 250 lines: one rule of guidance after the other.
package org.coilwright.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.geom.Area;
import java.awt.geom.GeneralPath;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.coilwright.checklist.Blank;
import org.coilwright.checklist.Blanks;
import org.coilwright.checklist.Checked;
import org.coilwright.checklist.Checklist;
import org.coilwright.checklist.Expected;
import org.coilwright.checklist.Hold;
import org.coilwright.checklist.Manner;
import org.coilwright.checklist.Section;
import org.coilwright.checklist.Step;
import org.coilwright.checklist.TestLine;
import org.coilwright.checklist.TestRow;
import org.coilwright.checklist.Texts;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Published guidance on checklists, as far as it is about the page. Sources, here under short
 * names; only ABS was read in the original, the others as others report them:
 *
 * <ul>
 *   <li>CAP: UK CAA, CAP 676, Emergency and Abnormal Checklists, issue 3, 2006, chapter 7.
 *   <li>NASA-T: Degani, On the Typography of Flight-Deck Documentation, NASA CR 177605, 1992.
 *   <li>NASA-C: Degani and Wiener, Human Factors of Flight-Deck Checklists, NASA CR 177549, 1990.
 *   <li>CfC: Gawande, Boorman, Berry, A Checklist for Checklists, 2010.
 *   <li>DOE: DOE-STD-1029-92, Writer's Guide for Technical Procedures, 1992.
 *   <li>HPI: DOE-HDBK-1028-2009, Human Performance Improvement Handbook, volume 2.
 *   <li>ABS: Australian Bureau of Statistics, Forms Design Standards, 2023.
 *   <li>Butterick: Practical Typography, line length and line spacing.
 * </ul>
 */
class PageGuidanceTest {
  private static final Faces FACES = Faces.load();
  private static final double MM = Sheet.MM;
  private static final Map<String, Sample> SAMPLES = new HashMap<>();

  /** A checklist on its pages. */
  private record Sample(String name, Checklist list, Layout layout) {
    @Override
    public String toString() {
      return name;
    }

    /** Every piece of a kind with its page. */
    <P extends Piece> List<Placed<P>> all(Class<P> kind) {
      List<Placed<P>> all = new ArrayList<>();
      for (int page = 0; page < layout.pages().size(); page++) {
        for (Piece piece : layout.pages().get(page)) {
          if (kind.isInstance(piece)) {
            all.add(new Placed<>(page, kind.cast(piece)));
          }
        }
      }
      return all;
    }

    Map<String, Placed<Piece.Entry>> entries() {
      Map<String, Placed<Piece.Entry>> byName = new HashMap<>();
      all(Piece.Entry.class).forEach(e -> byName.put(e.piece().blank().name(), e));
      return byName;
    }

    /** The text of a page as it is read, without blanks. */
    String squeezed(int page) {
      StringBuilder text = new StringBuilder();
      for (Piece piece : layout.pages().get(page)) {
        if (piece instanceof Piece.Text t) {
          text.append(t.text());
        }
      }
      return squeeze(text.toString());
    }
  }

  private record Placed<P extends Piece>(int page, P piece) {}

  @BeforeAll
  static void lay() {
    for (String example :
        List.of("wash-room-tub", "guest-house-cylinder", "cabin-water-heater", "attic-mistakes")) {
      for (String language : List.of("en", "de")) {
        Checklist list = Checked.kept(example, language);
        for (Checklist.Paper paper : Checklist.Paper.values()) {
          String name = example + " " + language + " " + paper;
          Layout layout = Layout.of(list.on(paper), FACES, Optional.empty());
          SAMPLES.put(name, new Sample(name, list, layout));
        }
      }
    }
  }

  static Stream<Sample> samples() {
    return SAMPLES.keySet().stream().sorted().map(SAMPLES::get);
  }

  private static String squeeze(String text) {
    return text.replaceAll("\\s+", "");
  }

  /** CK-01. CAP: body never under 10, headings about 14 and never under 12. */
  @ParameterizedTest
  @MethodSource("samples")
  void nothing_but_the_running_lines_is_under_ten_points(Sample sample) {
    for (Placed<Piece.Text> text : sample.all(Piece.Text.class)) {
      double least = text.piece().tag() == Tag.ARTIFACT ? 9 : 10;
      assertTrue(text.piece().size() >= least, text::toString);
      if (text.piece().tag().role() == Role.HEADING_2) {
        assertTrue(text.piece().size() >= 14, text::toString);
      }
    }
  }

  /** CK-02. NASA-T: height that is seen is the x-height; 10 pt of this face give 1.9 mm. */
  @Test
  void the_x_height_of_the_text_is_one_point_nine_millimetres() throws IOException {
    TrueTypeFont font = FACES.regular().font();
    double em = ink(font, 'x').getBounds2D().getHeight() / font.getUnitsPerEm();
    assertTrue(em * Type.BODY / MM >= 1.9, () -> "x-height " + em * Type.BODY / MM + " mm");
  }

  /** CK-03. NASA-T, 1 and 2: no face whose characters look alike. */
  @Test
  void characters_that_are_mistaken_for_each_other_differ_in_their_ink() throws IOException {
    TrueTypeFont font = FACES.regular().font();
    String alike = "0Oo1lI5S8B";
    for (int i = 0; i < alike.length(); i++) {
      for (int j = i + 1; j < alike.length(); j++) {
        Area one = ink(font, alike.charAt(i));
        Area other = ink(font, alike.charAt(j));
        double least = Math.min(size(one), size(other));
        Area apart = new Area(one);
        apart.exclusiveOr(other);
        String pair = alike.charAt(i) + " and " + alike.charAt(j);
        assertTrue(size(apart) > 0.12 * least, () -> pair + " look alike");
      }
    }
  }

  private static Area ink(TrueTypeFont font, char character) throws IOException {
    int glyph = font.getUnicodeCmapLookup().getGlyphId(character);
    GeneralPath path = font.getGlyph().getGlyph(glyph).getPath();
    return new Area(path);
  }

  /** Area of a shape, by strips. */
  private static double size(Area area) {
    double size = 0;
    var bounds = area.getBounds();
    int step = 16;
    for (int x = bounds.x; x < bounds.x + bounds.width; x += step) {
      for (int y = bounds.y; y < bounds.y + bounds.height; y += step) {
        size += area.contains(x + step / 2.0, y + step / 2.0) ? step * step : 0;
      }
    }
    return size;
  }

  /** CK-05. NASA-T, 11 and 12: no italics, at most two cuts. */
  @Test
  void there_are_two_cuts_and_neither_is_italic() {
    assertEquals(2, Face.values().length);
    for (Face face : Face.values()) {
      assertFalse(face.name().contains("ITALIC"), face::name);
    }
  }

  /** CK-06. NASA-T, 9: a quarter to a third of the type size between lines. */
  @ParameterizedTest
  @MethodSource("samples")
  void lines_of_a_paragraph_are_a_third_of_their_size_apart(Sample sample) {
    List<Placed<Piece.Text>> texts = sample.all(Piece.Text.class);
    for (int i = 1; i < texts.size(); i++) {
      Piece.Text above = texts.get(i - 1).piece();
      Piece.Text text = texts.get(i).piece();
      boolean same =
          texts.get(i).page() == texts.get(i - 1).page()
              && text.tag() == above.tag()
              && text.tag() != Tag.ARTIFACT
              && text.x() == above.x();
      if (same && text.baseline() > above.baseline()) {
        double apart = text.baseline() - above.baseline();
        assertTrue(apart >= 1.33 * Math.min(text.size(), above.size()), text::text);
      }
    }
  }

  /** CK-07. NASA-T, 13 to 16: black on white; nothing is printed on a dark ground. */
  @ParameterizedTest
  @MethodSource("samples")
  void no_text_stands_on_a_dark_ground(Sample sample) {
    for (Placed<Piece.Fill> fill : sample.all(Piece.Fill.class)) {
      if (fill.piece().grey() < 0.85) {
        Piece.Fill dark = fill.piece();
        for (Piece piece : sample.layout().pages().get(fill.page())) {
          if (piece instanceof Piece.Text text) {
            boolean on =
                text.x() >= dark.x()
                    && text.x() < dark.x() + dark.width()
                    && text.baseline() > dark.y()
                    && text.baseline() - 0.7 * text.size() < dark.y() + dark.height();
            assertFalse(on, text::text);
          }
        }
      }
    }
  }

  /** CK-08. NASA-T, 3.7: the wider the gap to the answer, the likelier the wrong line. */
  @ParameterizedTest
  @MethodSource("samples")
  void the_number_of_a_line_stands_close_to_its_boxes(Sample sample) {
    Map<String, Placed<Piece.Entry>> entries = sample.entries();
    for (TestLine line : lines(sample)) {
      Placed<Piece.Entry> pass = at(entries, line.first().name() + ".pass");
      double nearest =
          sample.layout().pages().get(pass.page()).stream()
              .filter(p -> p instanceof Piece.Text t && t.face() == Face.BOLD)
              .mapToDouble(p -> Math.abs(pass.piece().y() - ((Piece.Text) p).baseline()))
              .min()
              .orElse(1000);
      assertTrue(nearest < 12 * MM, line.first()::name);
    }
  }

  /** CK-09 and CK-10. Butterick: 45 to 90 characters a line; a sheet's width holds 110. */
  @ParameterizedTest
  @MethodSource("samples")
  void no_line_is_longer_than_a_hundred_and_ten_characters(Sample sample) {
    for (Placed<Piece.Text> text : sample.all(Piece.Text.class)) {
      if (text.piece().tag() != Tag.ARTIFACT) {
        assertTrue(text.piece().text().length() <= 110, text.piece()::text);
      }
    }
  }

  /** A head that breaks inside a word is not read at a glance. */
  @ParameterizedTest
  @MethodSource("samples")
  void no_head_of_a_column_breaks_inside_a_word(Sample sample) {
    Set<String> words = new HashSet<>();
    sample
        .list()
        .texts()
        .patterns()
        .forEach(
            (key, text) -> {
              if (key.startsWith("column.") || key.startsWith("box.")) {
                words.addAll(List.of(text.split(" ", -1)));
              }
            });
    words.add("·");
    for (Placed<Piece.Text> head : sample.all(Piece.Text.class)) {
      if (head.piece().tag().role() == Role.HEAD_CELL) {
        for (String word : head.piece().text().split(" ", -1)) {
          assertTrue(words.contains(word), word);
        }
      }
    }
  }

  /** CK-16. NASA-C, guideline 6: a completion call comes last. */
  @ParameterizedTest
  @MethodSource("samples")
  void each_section_ends_with_its_completion_and_the_sheet_with_its_count(Sample sample) {
    Map<String, Placed<Piece.Entry>> entries = sample.entries();
    for (Section section : sections(sample)) {
      Placed<Piece.Entry> end = at(entries, section.name() + ".initials");
      for (TestLine line : section.lines()) {
        for (Blank blank : Blanks.line(line)) {
          assertTrue(before(at(entries, blank.name()), end), blank::name);
        }
      }
    }
    int last = at(entries, sample.list().signers().get(0).name() + ".name").page();
    String text = sample.squeezed(last);
    assertTrue(
        text.contains(
            squeeze(
                sample
                    .list()
                    .texts()
                    .of(
                        "page.end",
                        sample.list().wires().size(),
                        sample.list().rows().size(),
                        sample.list().openPoints().size(),
                        sample.list().findings().size()))),
        text);
  }

  /**
   * CK-18. 10 CFR 50, Appendix B, criterion X: nothing that comes after a hold stands before it.
   */
  @ParameterizedTest
  @MethodSource("samples")
  void a_hold_has_its_own_signature_and_parts_what_comes_before_from_what_comes_after(
      Sample sample) {
    Map<String, Placed<Piece.Entry>> entries = sample.entries();
    List<Step> steps = sample.list().steps();
    for (int i = 0; i < steps.size(); i++) {
      if (steps.get(i) instanceof Hold hold) {
        Placed<Piece.Entry> signature = at(entries, hold.name() + ".signature");
        assertEquals(Blank.Kind.SIGNATURE, signature.piece().blank().kind());
        for (int j = 0; j < steps.size(); j++) {
          if (steps.get(j) instanceof Section section) {
            Placed<Piece.Entry> pass = at(entries, section.rows().get(0).name() + ".pass");
            assertEquals(j < i, before(pass, signature), section::title);
          }
        }
      }
    }
  }

  /** CK-21. DOE: a caution stands on the page of its step, above it; here by title and number. */
  @ParameterizedTest
  @MethodSource("samples")
  void a_caution_is_named_on_the_page_of_its_first_row(Sample sample) {
    Map<String, Placed<Piece.Entry>> entries = sample.entries();
    Texts texts = sample.list().texts();
    for (Section section : sections(sample)) {
      Placed<Piece.Entry> first = at(entries, section.rows().get(0).name() + ".pass");
      for (Checklist.Caution caution : section.readFirst()) {
        String line = texts.of("caution.line", caution.number(), caution.title());
        assertTrue(sample.squeezed(first.page()).contains(squeeze(line)), line);
      }
    }
  }

  /** The annex has each of them in full. */
  @ParameterizedTest
  @MethodSource("samples")
  void every_caution_stands_in_full_in_the_annex(Sample sample) {
    StringBuilder all = new StringBuilder();
    for (int page = 0; page < sample.layout().pages().size(); page++) {
      all.append(sample.squeezed(page));
    }
    for (Checklist.Caution caution : sample.list().cautions()) {
      String first = caution.paragraphs().get(0);
      String sentence = first.substring(0, Math.min(40, first.length()));
      assertTrue(all.toString().contains(squeeze(sentence)), sentence);
    }
  }

  /** CK-28. HPI: what is expected is read before the box it is compared with: left or above. */
  @ParameterizedTest
  @MethodSource("samples")
  void what_is_expected_stands_left_of_the_space_for_the_reading_or_above(Sample sample) {
    Map<String, Placed<Piece.Entry>> entries = sample.entries();
    for (TestRow row : sample.list().rows()) {
      Placed<Piece.Entry> reading = entries.get(row.name() + ".reading");
      if (reading != null) {
        String first = expected(sample, row).split(" ", -1)[0];
        boolean before =
            sample.layout().pages().get(reading.page()).stream()
                .anyMatch(p -> p instanceof Piece.Text t && stands(t, first, reading.piece()));
        assertTrue(before, () -> row.name() + ": " + first);
      }
    }
  }

  private static String expected(Sample sample, TestRow row) {
    return row.expected() instanceof Expected.Setting setting
        ? setting.value()
        : row.expected().text(sample.list().texts());
  }

  private static boolean stands(Piece.Text text, String first, Piece.Entry reading) {
    double down = reading.y() - text.baseline();
    boolean left = text.x() < reading.x() && Math.abs(down) < 30;
    boolean above = down > -1 && down < 90;
    return text.text().startsWith(first) && (left || above);
  }

  /** CK-29. CfC: what to do if a row is not met stands at the head of its section. */
  @ParameterizedTest
  @MethodSource("samples")
  void what_to_do_if_it_is_not_met_stands_at_the_head_of_the_section(Sample sample) {
    Map<String, Placed<Piece.Entry>> entries = sample.entries();
    for (Section section : sections(sample)) {
      int page = at(entries, section.rows().get(0).name() + ".pass").page();
      for (TestRow row : section.rows()) {
        boolean boxed = !row.manner().isDone();
        boolean told = sample.squeezed(page).contains(squeeze(row.otherwise()));
        assertTrue(!boxed || told, row::name);
      }
    }
  }

  /** CK-30. CfC: a section is parted only where a seventh of the page would stay blank. */
  @ParameterizedTest
  @MethodSource("samples")
  void a_section_is_parted_only_where_much_of_a_page_would_stay_blank(Sample sample) {
    Map<String, Placed<Piece.Entry>> entries = sample.entries();
    Texts texts = sample.list().texts();
    for (Section section : sections(sample)) {
      int first = at(entries, section.rows().get(0).name() + ".pass").page();
      int last = at(entries, section.name() + ".initials").page();
      if (first != last) {
        String title =
            texts.of(
                "section.title", section.number(), section.stage().title(texts), section.title());
        double top =
            sample.all(Piece.Text.class).stream()
                .filter(t -> t.page() == first && t.piece().tag().role() == Role.HEADING_2)
                .filter(t -> squeeze(title).startsWith(squeeze(t.piece().text())))
                .mapToDouble(t -> t.piece().baseline())
                .findFirst()
                .orElseThrow();
        assertTrue(top < 0.8 * sample.layout().pageHeight(), section::title);
        String next = sample.squeezed(last);
        assertTrue(next.contains(squeeze(texts.of("page.continued", title))), title);
      }
    }
  }

  /** No row breaks over a page: all that is filled in for it is on one. */
  @ParameterizedTest
  @MethodSource("samples")
  void a_row_is_on_one_page(Sample sample) {
    Map<String, Set<Integer>> pages = new HashMap<>();
    for (Placed<Piece.Entry> entry : sample.all(Piece.Entry.class)) {
      String name = entry.piece().blank().name();
      pages
          .computeIfAbsent(name.substring(0, name.lastIndexOf('.')), k -> new HashSet<>())
          .add(entry.page());
    }
    for (TestRow row : sample.list().rows()) {
      assertEquals(1, pages.getOrDefault(row.name(), Set.of()).size(), row::name);
    }
  }

  /** CK-31. CAP: a margin to bind and for a thumb. */
  @ParameterizedTest
  @MethodSource("samples")
  void nothing_is_filled_in_within_twelve_millimetres_of_an_edge(Sample sample) {
    for (Placed<Piece.Entry> entry : sample.all(Piece.Entry.class)) {
      Piece.Entry box = entry.piece();
      assertTrue(box.x() >= 20 * MM - 0.1, box.blank()::name);
      assertTrue(box.x() + box.width() <= sample.layout().pageWidth() - 12 * MM + 0.1);
      assertTrue(box.y() >= 12 * MM);
      assertTrue(box.y() + box.height() <= sample.layout().pageHeight() - 12 * MM);
    }
  }

  /** What is carried to the site stays short, and does not grow unnoticed. */
  @ParameterizedTest
  @MethodSource("samples")
  void the_work_sheet_and_the_annex_do_not_grow(Sample sample) {
    Map<String, Placed<Piece.Entry>> entries = sample.entries();
    int work = at(entries, sample.list().signers().get(0).name() + ".name").page() + 1;
    int annex = sample.layout().pages().size() - work;
    int most = sample.name().contains(" en ") ? 14 : 15;
    assertTrue(work <= most, () -> "work sheet of " + work + " pages");
    assertTrue(annex <= 6, () -> "annex of " + annex + " pages");
  }

  /** CK-34. Practice of manuals and procedures: each page says of what it is a page. */
  @ParameterizedTest
  @MethodSource("samples")
  void every_page_has_document_revision_number_digest_program_and_date(Sample sample) {
    Checklist.TitleBlock title = sample.list().title();
    int count = sample.layout().pages().size();
    for (int page = 0; page < count; page++) {
      String text = sample.squeezed(page);
      for (String wanted :
          List.of(
              title.reference(),
              title.revision(),
              title.shortDigest(),
              title.program(),
              title.printed(),
              sample.list().texts().of("page.number", page + 1, count))) {
        assertTrue(text.contains(squeeze(wanted)), wanted + " is not on page " + (page + 1));
      }
    }
  }

  /**
   * CK-35. A textbook of forms design: three lines an inch down, five characters an inch across; a
   * reading has four or five.
   */
  @ParameterizedTest
  @MethodSource("samples")
  void there_is_room_to_write_by_hand(Sample sample) {
    for (Placed<Piece.Entry> entry : sample.all(Piece.Entry.class)) {
      Piece.Entry box = entry.piece();
      if (box.blank().name().endsWith(".reading")) {
        assertTrue(box.width() >= 22.5 * MM && box.height() >= 24, box.blank()::name);
      } else if (box.blank().name().endsWith(".initials")) {
        assertTrue(box.width() >= 12 * MM && box.height() >= 24, box.blank()::name);
      }
    }
  }

  /** CK-36. ABS: thin lines, and boxes of one column share their left edge. */
  @ParameterizedTest
  @MethodSource("samples")
  void boxes_of_a_column_share_their_left_edge_and_have_thin_lines(Sample sample) {
    Map<String, Placed<Piece.Entry>> entries = sample.entries();
    for (Manner manner : Manner.values()) {
      for (String kind : List.of(".reading", ".pass", ".fail", ".initials")) {
        Set<Long> lefts = new HashSet<>();
        for (TestLine line : lines(sample)) {
          TestRow row = line.first();
          Placed<Piece.Entry> entry = entries.get(row.name() + kind);
          boolean alone = !line.isShared() && row.wire().isEmpty() && row.manner() == manner;
          // settings stand in two columns
          if (entry != null && alone && manner != Manner.COMPARED) {
            lefts.add(Math.round(entry.piece().x() / (0.2 * MM)));
          }
        }
        assertTrue(lefts.size() <= 1, kind);
      }
    }
    Set<List<Double>> written = new HashSet<>();
    sample
        .all(Piece.Entry.class)
        .forEach(e -> written.add(List.of((double) e.page(), e.piece().x(), e.piece().y())));
    for (Placed<Piece.Frame> frame : sample.all(Piece.Frame.class)) {
      boolean toWriteIn =
          written.contains(List.of((double) frame.page(), frame.piece().x(), frame.piece().y()));
      assertTrue(!toWriteIn || frame.piece().line() <= 0.5, frame::toString);
    }
  }

  /** CK-37. Guidance on forms that are scanned: boxes apart, so that a mark lands in one. */
  @ParameterizedTest
  @MethodSource("samples")
  void boxes_are_apart(Sample sample) {
    List<Placed<Piece.Entry>> entries = sample.all(Piece.Entry.class);
    for (int i = 0; i < entries.size(); i++) {
      for (int j = i + 1; j < Math.min(entries.size(), i + 12); j++) {
        if (entries.get(i).page() == entries.get(j).page()) {
          Piece.Entry one = entries.get(i).piece();
          Piece.Entry other = entries.get(j).piece();
          double across = gap(one.x(), one.width(), other.x(), other.width());
          double down = gap(one.y(), one.height(), other.y(), other.height());
          boolean clear = across >= 3.9 * MM || down >= 2 * MM - 0.1;
          assertTrue(clear, () -> one.blank().name() + " and " + other.blank().name());
        }
      }
    }
  }

  private static double gap(double from, double length, double other, double otherLength) {
    return Math.max(other - (from + length), from - (other + otherLength));
  }

  private static List<TestLine> lines(Sample sample) {
    return sections(sample).stream().flatMap(section -> section.lines().stream()).toList();
  }

  private static List<Section> sections(Sample sample) {
    return sample.list().steps().stream()
        .filter(Section.class::isInstance)
        .map(Section.class::cast)
        .toList();
  }

  private static Placed<Piece.Entry> at(Map<String, Placed<Piece.Entry>> entries, String name) {
    return Optional.ofNullable(entries.get(name)).orElseThrow(() -> new AssertionError(name));
  }

  private static boolean before(Placed<Piece.Entry> one, Placed<Piece.Entry> other) {
    return one.page() < other.page()
        || (one.page() == other.page() && one.piece().y() < other.piece().y());
  }
}
