package org.coilwright.pdf;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.PrivateKey;
import java.security.UnrecoverableKeyException;
import java.security.cert.Certificate;
import java.security.cert.X509Certificate;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.digitalsignature.PDSignature;
import org.apache.pdfbox.pdmodel.interactive.form.PDField;
import org.apache.pdfbox.pdmodel.interactive.form.PDSignatureField;
import org.bouncycastle.cert.jcajce.JcaCertStore;
import org.bouncycastle.cms.CMSException;
import org.bouncycastle.cms.CMSProcessableByteArray;
import org.bouncycastle.cms.CMSSignedDataGenerator;
import org.bouncycastle.cms.jcajce.JcaSignerInfoGeneratorBuilder;
import org.bouncycastle.operator.OperatorCreationException;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;
import org.bouncycastle.operator.jcajce.JcaDigestCalculatorProviderBuilder;
import org.coilwright.checklist.Blanks;

/** Signs a final record in its signature field. The bytes before it stay as they are. */
public final class RecordSigner {
  private static final String PASSWORD = "the password does not open it";

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
   * The record with a signature added behind it.
   *
   * @throws GeneralSecurityException if the key cannot sign
   */
  public byte[] sign(byte[] record) throws GeneralSecurityException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (PDDocument document = Loader.loadPDF(record)) {
      PDField field =
          document.getDocumentCatalog().getAcroForm(null).getField(Blanks.recordSignature().name());
      if (!(field instanceof PDSignatureField place)) {
        throw new IllegalStateException("a record without its signature field");
      }
      PDSignature signature = new PDSignature();
      signature.setFilter(PDSignature.FILTER_ADOBE_PPKLITE);
      signature.setSubFilter(PDSignature.SUBFILTER_ADBE_PKCS7_DETACHED);
      // setValue does the same, and then complains to the log that it draws no signature
      place.getCOSObject().setItem(COSName.V, signature);
      document.addSignature(signature, this::cms);
      document.saveIncremental(out);
    } catch (IOException e) {
      throw new GeneralSecurityException("its key cannot sign", e);
    }
    return out.toByteArray();
  }

  private byte[] cms(InputStream content) throws IOException {
    try {
      String algorithm = key.getAlgorithm().equals("EC") ? "SHA256withECDSA" : "SHA256withRSA";
      CMSSignedDataGenerator generator = new CMSSignedDataGenerator();
      generator.addSignerInfoGenerator(
          new JcaSignerInfoGeneratorBuilder(new JcaDigestCalculatorProviderBuilder().build())
              .build(
                  new JcaContentSignerBuilder(algorithm).build(key), (X509Certificate) chain[0]));
      generator.addCertificates(new JcaCertStore(Arrays.asList(chain)));
      CMSProcessableByteArray bytes = new CMSProcessableByteArray(content.readAllBytes());
      return generator.generate(bytes, false).getEncoded();
    } catch (GeneralSecurityException | OperatorCreationException | CMSException e) {
      throw new IOException(e.getMessage(), e);
    }
  }
}
