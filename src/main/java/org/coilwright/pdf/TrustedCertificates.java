package org.coilwright.pdf;

import java.io.ByteArrayInputStream;
import java.security.GeneralSecurityException;
import java.security.cert.CertPathBuilder;
import java.security.cert.CertStore;
import java.security.cert.Certificate;
import java.security.cert.CertificateException;
import java.security.cert.CertificateFactory;
import java.security.cert.CollectionCertStoreParameters;
import java.security.cert.PKIXBuilderParameters;
import java.security.cert.TrustAnchor;
import java.security.cert.X509CertSelector;
import java.security.cert.X509Certificate;
import java.time.Instant;
import java.util.Collection;
import java.util.Date;
import java.util.Set;
import java.util.stream.Collectors;

/** Certificates that the reader of a record trusts. Revocation is not asked for. */
public final class TrustedCertificates {
  private final Set<X509Certificate> trusted;

  private TrustedCertificates(Set<X509Certificate> trusted) {
    this.trusted = trusted;
  }

  /**
   * Reads them, one after the other as PEM, or as DER.
   *
   * @throws GeneralSecurityException if there are none
   */
  public static TrustedCertificates from(byte[] file) throws GeneralSecurityException {
    Collection<? extends Certificate> read =
        CertificateFactory.getInstance("X.509")
            .generateCertificates(new ByteArrayInputStream(file));
    Set<X509Certificate> trusted =
        read.stream()
            .filter(X509Certificate.class::isInstance)
            .map(X509Certificate.class::cast)
            .collect(Collectors.toUnmodifiableSet());
    if (trusted.isEmpty()) {
      throw new CertificateException("it holds no certificate");
    }
    return new TrustedCertificates(trusted);
  }

  /**
   * Whether a certificate is one of them, or leads to one.
   *
   * @param between certificates on the way
   * @param when all of them must be valid
   */
  boolean reaches(X509Certificate certificate, Collection<X509Certificate> between, Instant when) {
    if (trusted.contains(certificate)) {
      return true;
    }
    try {
      X509CertSelector target = new X509CertSelector();
      target.setCertificate(certificate);
      Set<TrustAnchor> anchors =
          trusted.stream().map(c -> new TrustAnchor(c, null)).collect(Collectors.toSet());
      PKIXBuilderParameters parameters = new PKIXBuilderParameters(anchors, target);
      parameters.addCertStore(
          CertStore.getInstance("Collection", new CollectionCertStoreParameters(between)));
      parameters.setRevocationEnabled(false);
      parameters.setDate(Date.from(when));
      CertPathBuilder.getInstance("PKIX").build(parameters);
      return true;
    } catch (GeneralSecurityException e) {
      return false; // no way leads there
    }
  }
}
