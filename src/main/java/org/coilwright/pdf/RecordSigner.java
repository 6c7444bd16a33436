package org.coilwright.pdf;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.PrivateKey;
import java.security.UnrecoverableKeyException;
import java.security.cert.Certificate;
import java.security.cert.X509Certificate;
import java.time.Instant;
import java.util.Arrays;
import java.util.Collections;
import java.util.GregorianCalendar;
import java.util.List;
import java.util.Optional;
import java.util.TimeZone;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.digitalsignature.ExternalSigningSupport;
import org.apache.pdfbox.pdmodel.interactive.digitalsignature.PDSignature;
import org.apache.pdfbox.pdmodel.interactive.digitalsignature.SignatureOptions;
import org.apache.pdfbox.pdmodel.interactive.form.PDField;
import org.apache.pdfbox.pdmodel.interactive.form.PDSignatureField;
import org.bouncycastle.asn1.ASN1Encoding;
import org.bouncycastle.asn1.DERSet;
import org.bouncycastle.asn1.cms.Attribute;
import org.bouncycastle.asn1.cms.AttributeTable;
import org.bouncycastle.asn1.cms.CMSAttributes;
import org.bouncycastle.asn1.ess.ESSCertIDv2;
import org.bouncycastle.asn1.ess.SigningCertificateV2;
import org.bouncycastle.asn1.pkcs.PKCSObjectIdentifiers;
import org.bouncycastle.cert.jcajce.JcaCertStore;
import org.bouncycastle.cms.CMSAttributeTableGenerator;
import org.bouncycastle.cms.CMSException;
import org.bouncycastle.cms.CMSProcessableByteArray;
import org.bouncycastle.cms.CMSSignedData;
import org.bouncycastle.cms.CMSSignedDataGenerator;
import org.bouncycastle.cms.DefaultSignedAttributeTableGenerator;
import org.bouncycastle.cms.jcajce.JcaSignerInfoGeneratorBuilder;
import org.bouncycastle.operator.OperatorCreationException;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;
import org.bouncycastle.operator.jcajce.JcaDigestCalculatorProviderBuilder;
import org.coilwright.checklist.Blanks;

/** Signs a final record in its signature field. The bytes before it stay as they are. */
public final class RecordSigner {
  private static final String PASSWORD = "the password does not open it";

  private static final int ROOM = 6 << 10;
  private static final int ROOM_FOR_STAMP = 16 << 10;

  /** Archival rules allow no longer text. */
  private static final int MOST_ROOM = 32_767;

  private final PrivateKey key;
  private final Certificate[] chain;

  private RecordSigner(PrivateKey key, Certificate[] chain) {
    this.key = key;
    this.chain = chain.clone();
  }

  /**
   * Opens a PKCS#12 keystore and takes the first key in it that has a certificate.
   *
   * @throws GeneralSecurityException if the password is wrong, it is no keystore or holds no such
   *     key; its message says which, one sentence without a full stop
   */
  public static RecordSigner from(byte[] keystore, char[] password)
      throws GeneralSecurityException {
    try {
      return first(keystore, password);
    } catch (IOException e) {
      throw new GeneralSecurityException(
          e.getCause() instanceof UnrecoverableKeyException
              ? PASSWORD
              : "it is no PKCS#12 keystore",
          e);
    } catch (UnrecoverableKeyException e) {
      throw new GeneralSecurityException(PASSWORD, e);
    }
  }

  private static RecordSigner first(byte[] keystore, char[] password)
      throws IOException, GeneralSecurityException {
    KeyStore store = KeyStore.getInstance("PKCS12");
    store.load(new ByteArrayInputStream(keystore), password);
    List<String> aliases = Collections.list(store.aliases()).stream().sorted().toList();
    for (String alias : aliases) {
      if (store.getKey(alias, password) instanceof PrivateKey key) {
        Certificate[] chain = store.getCertificateChain(alias);
        if (chain != null && chain.length > 0 && chain[0] instanceof X509Certificate) {
          return new RecordSigner(key, chain);
        }
      }
    }
    throw new GeneralSecurityException("it holds no private key with a certificate");
  }

  /**
   * The record with a signature added behind it, as PAdES B-B has it, or B-T with a time stamp.
   *
   * @param when by the clock of whoever signs
   * @param server gives the time stamp; none if there is to be none
   * @throws GeneralSecurityException if the key cannot sign
   * @throws IOException if no time stamp comes; its message says why, without a full stop
   */
  public byte[] sign(byte[] record, Instant when, Optional<TimeStamper> server)
      throws GeneralSecurityException, IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (PDDocument document = Loader.loadPDF(record);
        SignatureOptions options = new SignatureOptions()) {
      PDField field =
          document.getDocumentCatalog().getAcroForm(null).getField(Blanks.recordSignature().name());
      if (!(field instanceof PDSignatureField place)) {
        throw new IllegalStateException("a record without its signature field");
      }
      PDSignature signature = new PDSignature();
      signature.setFilter(PDSignature.FILTER_ADOBE_PPKLITE);
      signature.setSubFilter(PDSignature.SUBFILTER_ETSI_CADES_DETACHED);
      GregorianCalendar calendar = new GregorianCalendar(TimeZone.getTimeZone("UTC"));
      calendar.setTimeInMillis(when.toEpochMilli());
      signature.setSignDate(calendar);
      // setValue does the same, and then complains to the log that it draws no signature
      place.getCOSObject().setItem(COSName.V, signature);
      options.setPreferredSignatureSize(room(server.isPresent()));
      COSDictionary widget = place.getWidgets().get(0).getCOSObject();
      COSBase rectangle = widget.getDictionaryObject(COSName.RECT);
      COSBase appearance = widget.getDictionaryObject(COSName.AP);
      document.addSignature(signature, options);
      // which takes the place away where no picture of a signature is given
      widget.setItem(COSName.RECT, rectangle);
      widget.setItem(COSName.AP, appearance);
      ExternalSigningSupport signing = document.saveIncrementalForExternalSigning(out);
      CMSSignedData cms = cms(signing.getContent().readAllBytes());
      if (server.isPresent()) {
        cms = TimeStamps.stamped(cms, server.get());
      }
      signing.setSignature(cms.toASN1Structure().getEncoded(ASN1Encoding.DER));
    }
    return out.toByteArray();
  }

  /** Kept free for the signature: it is written into the file after the file was digested. */
  private int room(boolean stamped) throws GeneralSecurityException {
    int room = ROOM;
    for (Certificate certificate : chain) {
      room += certificate.getEncoded().length;
    }
    return Math.min(MOST_ROOM, stamped ? room + ROOM_FOR_STAMP : room);
  }

  private CMSSignedData cms(byte[] content) throws GeneralSecurityException {
    try {
      String algorithm = key.getAlgorithm().equals("EC") ? "SHA256withECDSA" : "SHA256withRSA";
      X509Certificate own = (X509Certificate) chain[0];
      CMSSignedDataGenerator generator = new CMSSignedDataGenerator();
      generator.addSignerInfoGenerator(
          new JcaSignerInfoGeneratorBuilder(new JcaDigestCalculatorProviderBuilder().build())
              .setSignedAttributeGenerator(attributes(own))
              .build(new JcaContentSignerBuilder(algorithm).build(key), own));
      generator.addCertificates(new JcaCertStore(Arrays.asList(chain)));
      return generator.generate(new CMSProcessableByteArray(content), false);
    } catch (OperatorCreationException | CMSException e) {
      throw new GeneralSecurityException("its key cannot sign", e);
    }
  }

  /** Names the certificate; the time stands in the PDF, where PAdES wants it, and not here. */
  private static CMSAttributeTableGenerator attributes(X509Certificate own)
      throws GeneralSecurityException {
    ESSCertIDv2 id = new ESSCertIDv2(TimeStamps.sha256(own.getEncoded()));
    Attribute certificate =
        new Attribute(
            PKCSObjectIdentifiers.id_aa_signingCertificateV2,
            new DERSet(new SigningCertificateV2(new ESSCertIDv2[] {id})));
    DefaultSignedAttributeTableGenerator usual =
        new DefaultSignedAttributeTableGenerator(new AttributeTable(certificate));
    return parameters -> usual.getAttributes(parameters).remove(CMSAttributes.signingTime);
  }
}
