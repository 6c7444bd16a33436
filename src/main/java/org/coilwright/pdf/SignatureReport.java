package org.coilwright.pdf;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * What came of looking at the signature of a record.
 *
 * @param signer who signed, as far as it can be read; empty if nobody did
 * @param faults why it must not be relied on, each without a full stop; none if it holds
 */
public record SignatureReport(Optional<Signer> signer, List<String> faults) {
  /** Copies the list. */
  public SignatureReport {
    faults = List.copyOf(faults);
  }

  /**
   * Who signed.
   *
   * @param name as the certificate has it
   * @param issuer who vouches for that, likewise; the same if nobody else does
   * @param fingerprint SHA-256 of the certificate, lower-case hex
   * @param stated when, by the clock of whoever signed
   * @param stamp when, by a time stamp
   * @param trust in the certificate
   */
  public record Signer(
      String name,
      String issuer,
      String fingerprint,
      Optional<Instant> stated,
      Optional<Stamp> stamp,
      Trust trust) {}

  /** A time stamp: when, and who says so. */
  public record Stamp(Instant when, String server, Trust trust) {}

  /** Whether a certificate leads to one that the reader trusts. */
  public enum Trust {
    /** It does. */
    TRUSTED,
    /** It does not. */
    NOT_TRUSTED,
    /** Nobody said which ones are trusted. */
    NOT_LOOKED_AT
  }
}
