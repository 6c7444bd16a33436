package org.coilwright.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;
import org.apache.pdfbox.pdmodel.interactive.form.PDAcroForm;
import org.apache.pdfbox.pdmodel.interactive.form.PDCheckBox;
import org.apache.pdfbox.pdmodel.interactive.form.PDField;
import org.apache.pdfbox.pdmodel.interactive.form.PDNonTerminalField;
import org.apache.pdfbox.pdmodel.interactive.form.PDSignatureField;
import org.apache.pdfbox.pdmodel.interactive.form.PDTextField;
import org.coilwright.checklist.Blank;
import org.coilwright.checklist.Blanks;
import org.coilwright.checklist.Checklist;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The form behind the pages. */
class FormFieldsTest {
  static Stream<Checklist> samples() {
    return ChecklistPdfTest.samples();
  }

  private static List<PDField> fields(PDDocument document) {
    PDAcroForm form = document.getDocumentCatalog().getAcroForm(null);
    assertNotNull(form);
    List<PDField> fields = new ArrayList<>();
    for (PDField field : form.getFieldTree()) {
      if (!(field instanceof PDNonTerminalField)) {
        fields.add(field);
      }
    }
    return fields;
  }

  @ParameterizedTest
  @MethodSource("samples")
  void every_place_to_fill_in_is_a_field_of_its_kind_with_a_tip(Checklist checklist)
      throws IOException {
    List<Blank> blanks = Blanks.all(checklist);
    try (PDDocument document = Loader.loadPDF(ChecklistPdfTest.bytes(checklist))) {
      List<PDField> fields = fields(document);
      for (Blank blank : blanks) {
        PDField field = document.getDocumentCatalog().getAcroForm(null).getField(blank.name());
        assertNotNull(field, blank::name);
        assertEquals(blank.tip(checklist.texts()), field.getAlternateFieldName());
        assertEquals(blank.kind(), kind(field), blank::name);
      }
      assertEquals(blanks.size(), fields.size());
    }
  }

  private static Blank.Kind kind(PDField field) {
    if (field instanceof PDTextField text) {
      return text.isMultiline() ? Blank.Kind.LINES : Blank.Kind.LINE;
    }
    return field instanceof PDSignatureField ? Blank.Kind.SIGNATURE : Blank.Kind.TICK;
  }

  @ParameterizedTest
  @MethodSource("samples")
  void no_two_places_share_a_name_or_a_tip(Checklist checklist) {
    List<Blank> blanks = Blanks.all(checklist);
    assertEquals(blanks.size(), new HashSet<>(blanks.stream().map(Blank::name).toList()).size());
    assertEquals(
        blanks.size(),
        new HashSet<>(blanks.stream().map(b -> b.tip(checklist.texts())).toList()).size());
  }

  @ParameterizedTest
  @MethodSource("samples")
  void tabbing_follows_the_order_in_which_the_page_is_read(Checklist checklist) throws IOException {
    List<String> wanted =
        Layout.of(checklist, Faces.load(), Optional.empty()).pages().stream()
            .flatMap(List::stream)
            .filter(Piece.Entry.class::isInstance)
            .map(piece -> ((Piece.Entry) piece).blank().name())
            .toList();
    assertEquals(Blanks.all(checklist).stream().map(Blank::name).toList(), wanted);
    List<String> tips = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(ChecklistPdfTest.bytes(checklist))) {
      for (PDPage page : document.getPages()) {
        assertEquals(COSName.S, page.getCOSObject().getDictionaryObject("Tabs"));
        for (PDAnnotation annotation : page.getAnnotations()) {
          tips.add(annotation.getCOSObject().getString(COSName.TU));
        }
      }
    }
    assertEquals(Blanks.all(checklist).stream().map(b -> b.tip(checklist.texts())).toList(), tips);
  }

  @ParameterizedTest
  @MethodSource("samples")
  void nothing_is_filled_in_and_no_box_is_ticked(Checklist checklist) throws IOException {
    try (PDDocument document = Loader.loadPDF(ChecklistPdfTest.bytes(checklist))) {
      for (PDField field : fields(document)) {
        if (field instanceof PDCheckBox box) {
          assertFalse(box.isChecked(), box::getFullyQualifiedName);
        } else {
          assertTrue(field.getValueAsString().isEmpty(), field::getFullyQualifiedName);
        }
      }
    }
  }

  @ParameterizedTest
  @MethodSource("samples")
  void a_pen_finds_room_for_a_reading_and_stays_clear_of_the_edge(Checklist checklist)
      throws IOException {
    double least = 12 * Sheet.MM;
    try (PDDocument document = Loader.loadPDF(ChecklistPdfTest.bytes(checklist))) {
      for (PDPage page : document.getPages()) {
        List<PDRectangle> earlier = new ArrayList<>();
        for (PDAnnotation annotation : page.getAnnotations()) {
          PDRectangle place = annotation.getRectangle();
          if (annotation.getCOSObject().getNameAsString(COSName.FT).equals("Tx")) {
            assertTrue(place.getWidth() >= least - 0.01, place::toString);
            assertTrue(place.getHeight() >= 6 * Sheet.MM - 0.01, place::toString);
          }
          assertTrue(place.getLowerLeftX() >= least, place::toString);
          assertTrue(place.getUpperRightX() <= page.getMediaBox().getWidth() - least);
          assertTrue(place.getLowerLeftY() >= least, place::toString);
          for (PDRectangle other : earlier) {
            assertFalse(overlap(place, other), () -> place + " on " + other);
          }
          earlier.add(place);
        }
      }
    }
  }

  private static boolean overlap(PDRectangle a, PDRectangle b) {
    return a.getLowerLeftX() < b.getUpperRightX()
        && b.getLowerLeftX() < a.getUpperRightX()
        && a.getLowerLeftY() < b.getUpperRightY()
        && b.getLowerLeftY() < a.getUpperRightY();
  }

  @ParameterizedTest
  @MethodSource("samples")
  void the_form_asks_no_viewer_to_draw_and_runs_nothing(Checklist checklist) throws IOException {
    try (PDDocument document = Loader.loadPDF(ChecklistPdfTest.bytes(checklist))) {
      PDAcroForm form = document.getDocumentCatalog().getAcroForm(null);
      assertFalse(form.getNeedAppearances());
      for (PDField field : form.getFieldTree()) {
        COSBase actions = field.getCOSObject().getDictionaryObject("AA");
        assertEquals(null, actions);
        assertEquals(null, field.getCOSObject().getDictionaryObject("A"));
      }
    }
  }
}
