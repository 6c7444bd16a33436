package org.coilwright.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayInputStream;
import java.util.List;
import java.util.stream.Stream;
import org.coilwright.checklist.Checklist;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.ValidationResult;

/** The machine-checkable rules of PDF/UA-1, by an independent validator. */
class ReadAloudTest {
  static Stream<Checklist> samples() {
    return ChecklistPdfTest.samples();
  }

  @BeforeAll
  static void startTheValidator() {
    VeraGreenfieldFoundryProvider.initialise();
  }

  @ParameterizedTest
  @MethodSource("samples")
  void every_page_can_be_read_aloud_in_order(Checklist checklist) throws Exception {
    byte[] bytes = ChecklistPdfTest.bytes(checklist);
    try (PDFAParser parser =
            Foundries.defaultInstance()
                .createParser(new ByteArrayInputStream(bytes), PDFAFlavour.PDFUA_1);
        PDFAValidator validator =
            Foundries.defaultInstance().createValidator(PDFAFlavour.PDFUA_1, false)) {
      ValidationResult result = validator.validate(parser);
      List<String> broken =
          result.getTestAssertions().stream()
              .map(a -> a.getRuleId().getClause() + ": " + a.getMessage())
              .distinct()
              .toList();
      assertEquals(List.of(), broken);
    }
  }
}
