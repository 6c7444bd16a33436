package org.coilwright.pdf;

import eu.europa.esig.dss.model.InMemoryDocument;
import eu.europa.esig.dss.pades.validation.PDFDocumentAnalyzer;
import eu.europa.esig.dss.spi.signature.AdvancedSignature;
import eu.europa.esig.dss.spi.validation.CommonCertificateVerifier;
import eu.europa.esig.dss.spi.x509.tsp.TimestampToken;
import java.util.ArrayList;
import java.util.List;

/** What the European Commission's library for signatures says of those in a PDF. */
public final class Baseline {
  private Baseline() {}

  /** A line for each signature: its form, whether it fits the file, and its time stamps. */
  public static List<String> of(byte[] pdf) {
    PDFDocumentAnalyzer analyzer = new PDFDocumentAnalyzer(new InMemoryDocument(pdf));
    analyzer.setCertificateVerifier(new CommonCertificateVerifier());
    List<String> said = new ArrayList<>();
    for (AdvancedSignature signature : analyzer.getSignatures()) {
      signature.checkSignatureIntegrity();
      boolean intact = signature.getSignatureCryptographicVerification().isSignatureValid();
      List<TimestampToken> stamps = signature.getSignatureTimestamps();
      boolean stamped =
          stamps.stream()
              .allMatch(
                  stamp ->
                      stamp.isMessageImprintDataIntact()
                          && stamp.getCertificates().stream().anyMatch(stamp::isSignedBy));
      String time = stamps.size() == 1 ? "1 time stamp" : stamps.size() + " time stamps";
      said.add(
          signature.getDataFoundUpToLevel()
              + (intact ? ", intact, " : ", BROKEN, ")
              + time
              + (stamps.isEmpty() ? "" : stamped ? " intact" : " BROKEN"));
    }
    return said;
  }
}
