package org.coilwright.cli;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.coilwright.pdf.SignatureReport;
import org.coilwright.pdf.SignatureReport.Signer;
import org.coilwright.pdf.SignatureReport.Trust;

/** What {@code verify} says about a signature. */
final class SignatureText {
  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss 'UTC'", Locale.ROOT)
          .withZone(ZoneOffset.UTC);

  private SignatureText() {}

  /** Sentences, a line each. */
  static List<String> of(SignatureReport report) {
    List<String> lines = new ArrayList<>();
    if (report.signer().isPresent()) {
      signer(report.signer().get(), report.faults().isEmpty(), lines);
    } else if (report.faults().isEmpty()) {
      lines.add("Not signed: nothing here shows who made this file, or that it is unchanged.");
    }
    report.faults().forEach(fault -> lines.add("NOT VALID: " + fault + "."));
    return lines;
  }

  private static void signer(Signer signer, boolean valid, List<String> lines) {
    boolean itself = signer.name().equals(signer.issuer());
    lines.add(
        (valid ? "Signed with the certificate of " : "Said to be signed with the certificate of ")
            + signer.name()
            + ", vouched for by "
            + (itself ? "itself" : signer.issuer())
            + " (SHA-256 "
            + signer.fingerprint()
            + ").");
    if (signer.stamp().isPresent()) {
      lines.add(
          "Time: "
              + time(signer.stamp().get().when())
              + ", confirmed by "
              + signer.stamp().get().server()
              + ".");
    } else if (signer.stated().isPresent()) {
      lines.add(
          "Time: "
              + time(signer.stated().get())
              + " by the clock of whoever signed; no time stamp confirms it.");
    } else {
      lines.add("Time: not stated.");
    }
    if (signer.trust() == Trust.TRUSTED) {
      lines.add("Its certificate leads to one that you gave as trusted. Revocation not looked at.");
    } else if (signer.trust() == Trust.NOT_LOOKED_AT) {
      lines.add(
          "Whether that certificate is really theirs was not looked at: give the certificates you"
              + " trust with --trust.");
    }
  }

  private static String time(Instant when) {
    return TIME.format(when);
  }
}
