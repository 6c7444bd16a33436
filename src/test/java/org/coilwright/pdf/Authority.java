package org.coilwright.pdf;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.KeyStore;
import java.security.PrivateKey;
import java.security.cert.Certificate;
import java.security.cert.X509Certificate;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Base64;
import java.util.Date;
import java.util.List;
import java.util.Set;
import org.bouncycastle.asn1.ASN1ObjectIdentifier;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.asn1.x509.BasicConstraints;
import org.bouncycastle.asn1.x509.ExtendedKeyUsage;
import org.bouncycastle.asn1.x509.Extension;
import org.bouncycastle.asn1.x509.KeyPurposeId;
import org.bouncycastle.asn1.x509.KeyUsage;
import org.bouncycastle.cert.jcajce.JcaCertStore;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cert.jcajce.JcaX509v3CertificateBuilder;
import org.bouncycastle.cms.jcajce.JcaSimpleSignerInfoGeneratorBuilder;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;
import org.bouncycastle.operator.jcajce.JcaDigestCalculatorProviderBuilder;
import org.bouncycastle.tsp.TSPAlgorithms;
import org.bouncycastle.tsp.TimeStampRequest;
import org.bouncycastle.tsp.TimeStampResponseGenerator;
import org.bouncycastle.tsp.TimeStampTokenGenerator;

/** A certificate authority made for one test, with what it certifies. */
public final class Authority {
  private final KeyPair keys;
  private final X509Certificate certificate;
  private int serial = 1;

  private Authority(KeyPair keys, X509Certificate certificate) {
    this.keys = keys;
    this.certificate = certificate;
  }

  /** A key with the certificate that this authority gave it. */
  public record Certified(PrivateKey key, X509Certificate certificate, X509Certificate issuer) {
    /** As a PKCS#12 keystore. */
    public byte[] keystore(String password) throws Exception {
      KeyStore store = KeyStore.getInstance("PKCS12");
      store.load(null, null);
      store.setKeyEntry(
          "key", key, password.toCharArray(), new Certificate[] {certificate, issuer});
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      store.store(out, password.toCharArray());
      return out.toByteArray();
    }

    /** Answers a request for a time stamp. */
    public byte[] stamp(byte[] request, Instant when) throws Exception {
      TimeStampTokenGenerator token =
          new TimeStampTokenGenerator(
              new JcaSimpleSignerInfoGeneratorBuilder().build("SHA256withRSA", key, certificate),
              new JcaDigestCalculatorProviderBuilder()
                  .build()
                  .get(new org.bouncycastle.asn1.x509.AlgorithmIdentifier(TSPAlgorithms.SHA256)),
              new ASN1ObjectIdentifier("1.2.3.4"));
      token.addCertificates(new JcaCertStore(List.of(certificate, issuer)));
      return new TimeStampResponseGenerator(token, Set.of(TSPAlgorithms.SHA256.getId()))
          .generate(new TimeStampRequest(request), BigInteger.TEN, Date.from(when))
          .getEncoded();
    }
  }

  /** A new one. */
  public static Authority named(String name) throws Exception {
    KeyPair keys = keys();
    X500Name own = new X500Name("CN=" + name);
    JcaX509v3CertificateBuilder builder =
        new JcaX509v3CertificateBuilder(
            own, BigInteger.ONE, days(-400), days(400), own, keys.getPublic());
    builder.addExtension(Extension.basicConstraints, true, new BasicConstraints(1));
    builder.addExtension(Extension.keyUsage, true, new KeyUsage(KeyUsage.keyCertSign));
    return new Authority(keys, signed(builder, keys.getPrivate()));
  }

  /** A signer whose certificate is valid between two days from now. */
  public Certified signer(String name, int from, int to) throws Exception {
    KeyPair own = keys();
    JcaX509v3CertificateBuilder builder = builder(name, from, to, own);
    builder.addExtension(
        Extension.keyUsage,
        true,
        new KeyUsage(KeyUsage.digitalSignature | KeyUsage.nonRepudiation));
    return new Certified(own.getPrivate(), signed(builder, keys.getPrivate()), certificate);
  }

  /** A time stamp server. */
  public Certified server(String name) throws Exception {
    KeyPair own = keys();
    JcaX509v3CertificateBuilder builder = builder(name, -400, 400, own);
    builder.addExtension(
        Extension.extendedKeyUsage, true, new ExtendedKeyUsage(KeyPurposeId.id_kp_timeStamping));
    return new Certified(own.getPrivate(), signed(builder, keys.getPrivate()), certificate);
  }

  private JcaX509v3CertificateBuilder builder(String name, int from, int to, KeyPair own) {
    serial++;
    return new JcaX509v3CertificateBuilder(
        certificate.getSubjectX500Principal(),
        BigInteger.valueOf(serial),
        days(from),
        days(to),
        new javax.security.auth.x500.X500Principal("CN=" + name),
        own.getPublic());
  }

  /** Its certificate as PEM. */
  public byte[] pem() throws IOException {
    try {
      return ("-----BEGIN CERTIFICATE-----\n"
              + Base64.getMimeEncoder().encodeToString(certificate.getEncoded())
              + "\n-----END CERTIFICATE-----\n")
          .getBytes(StandardCharsets.US_ASCII);
    } catch (java.security.cert.CertificateEncodingException e) {
      throw new IOException(e);
    }
  }

  private static KeyPair keys() throws Exception {
    KeyPairGenerator generator = KeyPairGenerator.getInstance("RSA");
    generator.initialize(2048);
    return generator.generateKeyPair();
  }

  private static Date days(int days) {
    return Date.from(Instant.now().plus(days, ChronoUnit.DAYS));
  }

  private static X509Certificate signed(JcaX509v3CertificateBuilder builder, PrivateKey by)
      throws Exception {
    return new JcaX509CertificateConverter()
        .getCertificate(builder.build(new JcaContentSignerBuilder("SHA256withRSA").build(by)));
  }
}
