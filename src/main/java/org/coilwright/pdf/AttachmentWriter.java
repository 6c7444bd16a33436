package org.coilwright.pdf;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Calendar;
import java.util.List;
import java.util.TreeMap;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentNameDictionary;
import org.apache.pdfbox.pdmodel.PDEmbeddedFilesNameTreeNode;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.apache.pdfbox.pdmodel.common.filespecification.PDEmbeddedFile;

/** Puts files into a document and says what they are to it. */
final class AttachmentWriter {
  private final PDDocument document;
  private final Calendar date;

  /**
   * For one document.
   *
   * @param date the files' own, for they have no clock
   */
  AttachmentWriter(PDDocument document, Calendar date) {
    this.document = document;
    this.date = date;
  }

  void write(List<Attachment> attachments) throws IOException {
    if (attachments.isEmpty()) {
      return;
    }
    TreeMap<String, PDComplexFileSpecification> byName = new TreeMap<>();
    COSArray associated = new COSArray();
    for (Attachment attachment : attachments) {
      PDComplexFileSpecification file = file(attachment);
      if (byName.put(attachment.name(), file) != null) {
        throw new IllegalArgumentException("two attachments called " + attachment.name());
      }
      associated.add(file);
    }
    PDEmbeddedFilesNameTreeNode tree = new PDEmbeddedFilesNameTreeNode();
    tree.setNames(byName);
    PDDocumentNameDictionary names = new PDDocumentNameDictionary(document.getDocumentCatalog());
    names.setEmbeddedFiles(tree);
    document.getDocumentCatalog().setNames(names);
    document.getDocumentCatalog().getCOSObject().setItem(COSName.AF, associated);
  }

  private PDComplexFileSpecification file(Attachment attachment) throws IOException {
    PDEmbeddedFile embedded =
        new PDEmbeddedFile(
            document, new ByteArrayInputStream(attachment.bytes()), COSName.FLATE_DECODE);
    embedded.setSubtype(attachment.type());
    embedded.setSize(attachment.bytes().length);
    embedded.setModDate(date);
    PDComplexFileSpecification file = new PDComplexFileSpecification();
    file.setFile(attachment.name());
    file.setFileUnicode(attachment.name());
    file.setFileDescription(attachment.description());
    file.setEmbeddedFile(embedded);
    file.setEmbeddedFileUnicode(embedded);
    file.getCOSObject()
        .setName(COSName.getPDFName("AFRelationship"), attachment.relation().pdfName());
    return file;
  }
}
