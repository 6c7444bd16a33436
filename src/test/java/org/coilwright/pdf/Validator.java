package org.coilwright.pdf;

import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.List;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;

/** Asks veraPDF. */
public final class Validator {
  private static final List<PDFAFlavour> BOTH = List.of(PDFAFlavour.PDFA_3_U, PDFAFlavour.PDFUA_1);

  static {
    VeraGreenfieldFoundryProvider.initialise();
  }

  private Validator() {}

  /** What a file breaks of PDF/A-3u and PDF/UA-1, each rule once. */
  public static List<String> broken(byte[] pdf) throws Exception {
    List<String> broken = new ArrayList<>();
    for (PDFAFlavour flavour : BOTH) {
      try (PDFAParser parser =
              Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), flavour);
          PDFAValidator validator = Foundries.defaultInstance().createValidator(flavour, false)) {
        validator.validate(parser).getTestAssertions().stream()
            .map(
                a ->
                    flavour
                        + " "
                        + a.getRuleId().getClause()
                        + "-"
                        + a.getRuleId().getTestNumber()
                        + ": "
                        + a.getMessage())
            .distinct()
            .forEach(broken::add);
      }
    }
    return broken;
  }
}
