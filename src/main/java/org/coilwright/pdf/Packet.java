package org.coilwright.pdf;

import java.nio.charset.StandardCharsets;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;

/**
 * The metadata packet that archives and screen readers look at: title, language, PDF/A and PDF/UA
 * part.
 */
final class Packet {
  private Packet() {}

  /** A packet that says what the document information says. */
  static byte[] of(PDDocumentInformation information, String date, String language) {
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
            xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/"
            xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/"
            xmlns:pdfaExtension="http://www.aiim.org/pdfa/ns/extension/"
            xmlns:pdfaSchema="http://www.aiim.org/pdfa/ns/schema#"
            xmlns:pdfaProperty="http://www.aiim.org/pdfa/ns/property#">
           <dc:title><rdf:Alt><rdf:li xml:lang="x-default">%s</rdf:li></rdf:Alt></dc:title>
           <dc:language><rdf:Bag><rdf:li>%s</rdf:li></rdf:Bag></dc:language>
           <xmp:CreatorTool>%s</xmp:CreatorTool>
           <xmp:CreateDate>%s</xmp:CreateDate>
           <pdf:Producer>%s</pdf:Producer>
           <pdfaid:part>3</pdfaid:part>
           <pdfaid:conformance>U</pdfaid:conformance>
           <pdfuaid:part>1</pdfuaid:part>
           <pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType="Resource">
            <pdfaSchema:schema>PDF/UA identification</pdfaSchema:schema>
            <pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>
            <pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>
            <pdfaSchema:property><rdf:Seq><rdf:li rdf:parseType="Resource">
             <pdfaProperty:name>part</pdfaProperty:name>
             <pdfaProperty:valueType>Integer</pdfaProperty:valueType>
             <pdfaProperty:category>internal</pdfaProperty:category>
             <pdfaProperty:description>part of ISO 14289 it follows</pdfaProperty:description>
            </rdf:li></rdf:Seq></pdfaSchema:property>
           </rdf:li></rdf:Bag></pdfaExtension:schemas>
          </rdf:Description>
         </rdf:RDF>
        </x:xmpmeta>
        <?xpacket end="r"?>
        """
            .formatted(title, language, program, escaped(date), program);
    return packet.getBytes(StandardCharsets.UTF_8);
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
  }
}
