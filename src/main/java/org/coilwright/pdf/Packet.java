package org.coilwright.pdf;

import java.nio.charset.StandardCharsets;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;

/** The metadata packet that archives and screen readers look at: title, language, PDF/UA part. */
final class Packet {
  private Packet() {}

  /** A packet that says what the document information says. */
  static byte[] of(PDDocumentInformation information, String date) {
    String title = escaped(information.getTitle());
    String program = escaped(information.getCreator());
    String packet =
        """
        <?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>
        <x:xmpmeta xmlns:x="adobe:ns:meta/">
         <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
          <rdf:Description rdf:about=""
            xmlns:dc="http://purl.org/dc/elements/1.1/"
            xmlns:xmp="http://ns.adobe.com/xap/1.0/"
            xmlns:pdf="http://ns.adobe.com/pdf/1.3/"
            xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">
           <dc:title><rdf:Alt><rdf:li xml:lang="x-default">%s</rdf:li></rdf:Alt></dc:title>
           <dc:language><rdf:Bag><rdf:li>en</rdf:li></rdf:Bag></dc:language>
           <xmp:CreatorTool>%s</xmp:CreatorTool>
           <xmp:CreateDate>%s</xmp:CreateDate>
           <pdf:Producer>%s</pdf:Producer>
           <pdfuaid:part>1</pdfuaid:part>
          </rdf:Description>
         </rdf:RDF>
        </x:xmpmeta>
        <?xpacket end="r"?>
        """
            .formatted(title, program, escaped(date), program);
    return packet.getBytes(StandardCharsets.UTF_8);
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
  }
}
