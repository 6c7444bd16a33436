package org.coilwright.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Stream;
import org.coilwright.checklist.Checklist;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The machine-checkable rules of PDF/A-3u and PDF/UA-1, by an independent validator. */
class ValidatorTest {
  static Stream<Checklist> samples() {
    return ChecklistPdfTest.samples();
  }

  @ParameterizedTest
  @MethodSource("samples")
  void every_form_can_be_archived_and_read_aloud_in_order(Checklist checklist) throws Exception {
    assertEquals(List.of(), Validator.broken(ChecklistPdfTest.bytes(checklist)));
  }

  @Test
  void the_validator_does_find_what_is_wrong() throws Exception {
    byte[] form = ChecklistPdfTest.bytes(SampleChecklists.bare());
    String text = new String(form, StandardCharsets.ISO_8859_1);
    byte[] without =
        text.replace("<pdfaid:part>3<", "<pdfaid:part>7<").getBytes(StandardCharsets.ISO_8859_1);
    assertFalse(Validator.broken(without).isEmpty());
  }
}
