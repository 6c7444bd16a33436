package org.coilwright.pdf;

import java.io.IOException;
import java.math.BigInteger;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Optional;
import org.bouncycastle.asn1.DERSet;
import org.bouncycastle.asn1.cms.Attribute;
import org.bouncycastle.asn1.cms.AttributeTable;
import org.bouncycastle.asn1.pkcs.PKCSObjectIdentifiers;
import org.bouncycastle.cert.X509CertificateHolder;
import org.bouncycastle.cms.CMSException;
import org.bouncycastle.cms.CMSSignedData;
import org.bouncycastle.cms.SignerId;
import org.bouncycastle.cms.SignerInformation;
import org.bouncycastle.cms.SignerInformationStore;
import org.bouncycastle.cms.jcajce.JcaSimpleSignerInfoVerifierBuilder;
import org.bouncycastle.operator.OperatorCreationException;
import org.bouncycastle.tsp.TSPAlgorithms;
import org.bouncycastle.tsp.TSPException;
import org.bouncycastle.tsp.TimeStampRequest;
import org.bouncycastle.tsp.TimeStampRequestGenerator;
import org.bouncycastle.tsp.TimeStampResponse;
import org.bouncycastle.tsp.TimeStampToken;
import org.bouncycastle.util.Store;

/** Time stamps over signatures, as PAdES B-T has them. */
final class TimeStamps {
  private static final int NONCE_BITS = 64;

  private TimeStamps() {}

  /** The signature with a time stamp over it. */
  static CMSSignedData stamped(CMSSignedData signature, TimeStamper server)
      throws GeneralSecurityException, IOException {
    try {
      SignerInformation signer = signature.getSignerInfos().getSigners().iterator().next();
      TimeStampRequestGenerator generator = new TimeStampRequestGenerator();
      generator.setCertReq(true);
      TimeStampRequest request =
          generator.generate(
              TSPAlgorithms.SHA256,
              sha256(signer.getSignature()),
              new BigInteger(NONCE_BITS, new SecureRandom()));
      TimeStampResponse response = response(server.answer(request.getEncoded()));
      response.validate(request);
      TimeStampToken token = response.getTimeStampToken();
      if (token == null) {
        throw new IOException("it gives no time stamp");
      }
      validate(token, signer.getSignature());
      AttributeTable unsigned =
          new AttributeTable(
              new Attribute(
                  PKCSObjectIdentifiers.id_aa_signatureTimeStampToken,
                  new DERSet(token.toCMSSignedData().toASN1Structure())));
      return CMSSignedData.replaceSigners(
          signature,
          new SignerInformationStore(
              SignerInformation.replaceUnsignedAttributes(signer, unsigned)));
    } catch (TSPException e) {
      throw new IOException("its answer is none to what was asked (" + e.getMessage() + ")", e);
    }
  }

  private static TimeStampResponse response(byte[] answer) throws IOException, TSPException {
    try {
      return new TimeStampResponse(answer);
    } catch (IOException | RuntimeException e) { // the library's, at what is no answer
      throw new IOException("its answer is no time stamp", e);
    }
  }

  /**
   * Checks a time stamp over a signature.
   *
   * @return certificate of whoever gave it
   * @throws GeneralSecurityException if it is none, or over something else
   */
  static X509CertificateHolder validate(TimeStampToken token, byte[] signature)
      throws GeneralSecurityException {
    try {
      if (!TSPAlgorithms.SHA256.equals(token.getTimeStampInfo().getMessageImprintAlgOID())
          || !MessageDigest.isEqual(
              sha256(signature), token.getTimeStampInfo().getMessageImprintDigest())) {
        throw new GeneralSecurityException("its time stamp is over something else");
      }
      X509CertificateHolder certificate =
          certificate(token.getCertificates(), token.getSID())
              .orElseThrow(
                  () ->
                      new GeneralSecurityException(
                          "its time stamp lacks the certificate of who gave it"));
      token.validate(new JcaSimpleSignerInfoVerifierBuilder().build(certificate));
      return certificate;
    } catch (TSPException | OperatorCreationException e) {
      throw new GeneralSecurityException("its time stamp is not valid", e);
    }
  }

  /** The certificate of a signer among those that came along. */
  static Optional<X509CertificateHolder> certificate(
      Store<X509CertificateHolder> certificates, SignerId signer) {
    return certificates.getMatches(null).stream().filter(signer::match).findFirst();
  }

  /** The time stamp that a signature carries. */
  static TimeStampToken of(Attribute attribute) throws GeneralSecurityException {
    try {
      return new TimeStampToken(
          new CMSSignedData(
              attribute.getAttrValues().getObjectAt(0).toASN1Primitive().getEncoded()));
    } catch (IOException | CMSException | TSPException | RuntimeException e) {
      throw new GeneralSecurityException("its time stamp cannot be read", e);
    }
  }

  static byte[] sha256(byte[] bytes) throws GeneralSecurityException {
    return MessageDigest.getInstance("SHA-256").digest(bytes);
  }
}
