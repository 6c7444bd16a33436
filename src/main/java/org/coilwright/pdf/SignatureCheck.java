// Over 250 lines: one thing that a signature must hold after the other.
package org.coilwright.pdf;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.cert.CertificateException;
import java.security.cert.X509Certificate;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Calendar;
import java.util.Collection;
import java.util.HexFormat;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.digitalsignature.PDSignature;
import org.bouncycastle.asn1.cms.Attribute;
import org.bouncycastle.asn1.cms.AttributeTable;
import org.bouncycastle.asn1.ess.SigningCertificateV2;
import org.bouncycastle.asn1.nist.NISTObjectIdentifiers;
import org.bouncycastle.asn1.pkcs.PKCSObjectIdentifiers;
import org.bouncycastle.cert.X509CertificateHolder;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cms.CMSException;
import org.bouncycastle.cms.CMSProcessableByteArray;
import org.bouncycastle.cms.CMSSignedData;
import org.bouncycastle.cms.SignerInformation;
import org.bouncycastle.cms.jcajce.JcaSimpleSignerInfoVerifierBuilder;
import org.bouncycastle.operator.OperatorCreationException;
import org.bouncycastle.tsp.TimeStampToken;
import org.bouncycastle.util.Store;
import org.coilwright.pdf.SignatureReport.Signer;
import org.coilwright.pdf.SignatureReport.Stamp;
import org.coilwright.pdf.SignatureReport.Trust;

/**
 * Checks the signature of a record: that it covers every byte of the file, fits them, and who made
 * it when. Whether a certificate was revoked is not asked for.
 */
public final class SignatureCheck {
  private static final byte[] RANGE = "/ByteRange".getBytes(StandardCharsets.US_ASCII);

  private static final Set<String> STRONG =
      Set.of(
          NISTObjectIdentifiers.id_sha256.getId(),
          NISTObjectIdentifiers.id_sha384.getId(),
          NISTObjectIdentifiers.id_sha512.getId());

  private final byte[] pdf;
  private final Optional<TrustedCertificates> trusted;
  private final Instant now;
  private final List<String> faults = new ArrayList<>();

  private SignatureCheck(byte[] pdf, Optional<TrustedCertificates> trusted, Instant now) {
    this.pdf = pdf;
    this.trusted = trusted;
    this.now = now;
  }

  /**
   * Checks. Never throws because of what the bytes hold.
   *
   * @param trusted what the reader trusts, if that was said
   */
  public static SignatureReport of(byte[] pdf, Optional<TrustedCertificates> trusted, Instant now) {
    SignatureCheck check = new SignatureCheck(pdf, trusted, now);
    Optional<Signer> signer = Optional.empty();
    try (PDDocument document = Loader.loadPDF(pdf)) {
      List<PDSignature> signatures = document.getSignatureDictionaries();
      if (signatures.isEmpty()) {
        if (check.wasSigned()) {
          check.faults.add("it was signed once, and the signature was taken out");
        }
      } else if (signatures.size() > 1) {
        check.faults.add("it holds " + signatures.size() + " signatures, where a record has one");
      } else {
        signer = check.signature(signatures.get(0));
      }
    } catch (IOException | RuntimeException e) { // the library's, at objects of unexpected types
      check.faults.add("its signature cannot be read");
    } catch (GeneralSecurityException e) {
      check.faults.add(Objects.requireNonNullElse(e.getMessage(), "it is not valid"));
    }
    return new SignatureReport(signer, check.faults);
  }

  private boolean wasSigned() {
    for (int i = 0; i + RANGE.length <= pdf.length; i++) {
      if (Arrays.equals(pdf, i, i + RANGE.length, RANGE, 0, RANGE.length)) {
        return true;
      }
    }
    return false;
  }

  private Optional<Signer> signature(PDSignature signature)
      throws GeneralSecurityException, IOException {
    int[] range = signature.getByteRange();
    if (range.length != 4
        || range[0] != 0
        || range[1] <= 0
        || range[2] <= range[1]
        || range[3] < 0
        || range[2] > pdf.length
        || range[3] > pdf.length - range[2]) {
      throw new GeneralSecurityException("it does not say which bytes the signature covers");
    }
    int uncovered = pdf.length - range[2] - range[3];
    if (uncovered > 0) {
      faults.add(
          "the file was changed after it was signed: its last "
              + uncovered
              + " bytes are not covered by the signature");
    }
    byte[] contents = contents(range);
    if (!Arrays.equals(contents, signature.getContents())) {
      throw new GeneralSecurityException("the signature leaves out more of the file than itself");
    }
    byte[] content = new byte[range[1] + range[3]];
    System.arraycopy(pdf, 0, content, 0, range[1]);
    System.arraycopy(pdf, range[2], content, range[1], range[3]);
    CMSSignedData cms;
    try {
      cms =
          new CMSSignedData(
              new CMSProcessableByteArray(content), new ByteArrayInputStream(contents));
    } catch (CMSException | RuntimeException e) { // the library's, at what is no signature
      throw new GeneralSecurityException("its signature is empty or damaged", e);
    }
    return Optional.of(signer(cms, signature));
  }

  /** What lies between the covered parts: the signature in hexadecimal digits and nothing else. */
  private byte[] contents(int[] range) throws GeneralSecurityException {
    String gap = new String(pdf, range[1], range[2] - range[1], StandardCharsets.ISO_8859_1);
    if (!gap.matches("<(?:[0-9a-fA-F]{2})*>")) {
      throw new GeneralSecurityException("the signature leaves out more of the file than itself");
    }
    return HexFormat.of().parseHex(gap, 1, gap.length() - 1);
  }

  private Signer signer(CMSSignedData cms, PDSignature signature) throws GeneralSecurityException {
    Collection<SignerInformation> signers = cms.getSignerInfos().getSigners();
    if (signers.size() != 1 || !cms.isDetachedSignature()) {
      throw new GeneralSecurityException("its signature is of another kind than a record's");
    }
    SignerInformation information = signers.iterator().next();
    Store<X509CertificateHolder> store = cms.getCertificates();
    X509Certificate certificate =
        plain(
            TimeStamps.certificate(store, information.getSID())
                .orElseThrow(
                    () ->
                        new GeneralSecurityException(
                            "its signature lacks the certificate of who signed")));
    verify(information, certificate);
    bound(information, certificate);
    Optional<Instant> stated =
        Optional.ofNullable(signature.getSignDate()).map(Calendar::toInstant);
    Optional<Stamp> stamp = stamp(information);
    Instant when = stamp.map(Stamp::when).orElse(now);
    validity(certificate, when, stamp.isPresent());
    boolean[] usage = certificate.getKeyUsage();
    if (usage != null && !usage[0] && !usage[1]) {
      faults.add("its certificate is not meant for signing");
    }
    Trust trust = trust(certificate, store.getMatches(null), when);
    if (trust == Trust.NOT_TRUSTED) {
      faults.add("its certificate does not lead to any that was given as trusted");
    }
    return new Signer(
        certificate.getSubjectX500Principal().getName(),
        certificate.getIssuerX500Principal().getName(),
        HexFormat.of().formatHex(TimeStamps.sha256(certificate.getEncoded())),
        stated,
        stamp,
        trust);
  }

  private void verify(SignerInformation signer, X509Certificate certificate) {
    try {
      if (!STRONG.contains(signer.getDigestAlgOID())) {
        faults.add("its signature uses a digest that can be forged");
      }
      if (!signer.verify(
          new JcaSimpleSignerInfoVerifierBuilder().build(certificate.getPublicKey()))) {
        faults.add("its signature was not made with the key of its certificate");
      }
    } catch (CMSException | OperatorCreationException | RuntimeException e) {
      faults.add("its signature does not fit the file: one of them was changed");
    }
  }

  /** The signature names its certificate, so that no other with the same key can be put there. */
  private void bound(SignerInformation signer, X509Certificate certificate)
      throws GeneralSecurityException {
    AttributeTable signed = signer.getSignedAttributes();
    Attribute named =
        signed == null ? null : signed.get(PKCSObjectIdentifiers.id_aa_signingCertificateV2);
    if (named == null) {
      return;
    }
    SigningCertificateV2 certificates =
        SigningCertificateV2.getInstance(named.getAttrValues().getObjectAt(0));
    boolean sha256 =
        certificates
            .getCerts()[0]
            .getHashAlgorithm()
            .getAlgorithm()
            .equals(NISTObjectIdentifiers.id_sha256);
    byte[] own = TimeStamps.sha256(certificate.getEncoded());
    if (sha256 && !Arrays.equals(own, certificates.getCerts()[0].getCertHash())) {
      faults.add("its signature names another certificate than it carries");
    }
  }

  private Optional<Stamp> stamp(SignerInformation signer) throws GeneralSecurityException {
    AttributeTable unsigned = signer.getUnsignedAttributes();
    Attribute attribute =
        unsigned == null ? null : unsigned.get(PKCSObjectIdentifiers.id_aa_signatureTimeStampToken);
    if (attribute == null) {
      return Optional.empty();
    }
    TimeStampToken token = TimeStamps.of(attribute);
    X509Certificate server = plain(TimeStamps.validate(token, signer.getSignature()));
    Instant when = token.getTimeStampInfo().getGenTime().toInstant();
    Trust trust = trust(server, token.getCertificates().getMatches(null), when);
    if (trust == Trust.NOT_TRUSTED) {
      faults.add("its time stamp's certificate does not lead to any that was given as trusted");
    }
    return Optional.of(new Stamp(when, server.getSubjectX500Principal().getName(), trust));
  }

  private void validity(X509Certificate certificate, Instant when, boolean stamped) {
    if (when.isBefore(certificate.getNotBefore().toInstant())) {
      faults.add("its certificate was not yet valid when it was signed");
    } else if (when.isAfter(certificate.getNotAfter().toInstant())) {
      faults.add(
          stamped
              ? "its certificate was no longer valid when it was signed"
              : "its certificate is no longer valid, and no time stamp shows that it was signed"
                  + " before");
    }
  }

  private Trust trust(
      X509Certificate certificate, Collection<X509CertificateHolder> others, Instant when)
      throws CertificateException {
    if (trusted.isEmpty()) {
      return Trust.NOT_LOOKED_AT;
    }
    List<X509Certificate> between = new ArrayList<>();
    for (X509CertificateHolder other : others) {
      between.add(plain(other));
    }
    return trusted.get().reaches(certificate, between, when) ? Trust.TRUSTED : Trust.NOT_TRUSTED;
  }

  private static X509Certificate plain(X509CertificateHolder holder) throws CertificateException {
    return new JcaX509CertificateConverter().getCertificate(holder);
  }
}
