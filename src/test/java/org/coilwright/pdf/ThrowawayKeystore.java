package org.coilwright.pdf;

import java.io.ByteArrayOutputStream;
import java.math.BigInteger;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.KeyStore;
import java.security.cert.Certificate;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Date;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cert.jcajce.JcaX509v3CertificateBuilder;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;

/** A keystore made for one test, with a certificate that signs itself. */
public final class ThrowawayKeystore {
  private ThrowawayKeystore() {}

  /** Its bytes. */
  public static byte[] bytes(String algorithm, String password) throws Exception {
    KeyPairGenerator generator = KeyPairGenerator.getInstance(algorithm);
    generator.initialize(algorithm.equals("EC") ? 256 : 2048);
    KeyPair keys = generator.generateKeyPair();
    X500Name name = new X500Name("CN=Nobody, O=Test bench");
    Instant now = Instant.now();
    var certificate =
        new JcaX509v3CertificateBuilder(
                name,
                BigInteger.ONE,
                Date.from(now.minus(1, ChronoUnit.DAYS)),
                Date.from(now.plus(1, ChronoUnit.DAYS)),
                name,
                keys.getPublic())
            .build(
                new JcaContentSignerBuilder(
                        algorithm.equals("EC") ? "SHA256withECDSA" : "SHA256withRSA")
                    .build(keys.getPrivate()));
    KeyStore store = KeyStore.getInstance("PKCS12");
    store.load(null, null);
    store.setKeyEntry(
        "key",
        keys.getPrivate(),
        password.toCharArray(),
        new Certificate[] {new JcaX509CertificateConverter().getCertificate(certificate)});
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    store.store(out, password.toCharArray());
    return out.toByteArray();
  }
}
