package org.coilwright.pdf;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.zip.InflaterInputStream;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;

/**
 * Takes the attached files out, as far as they are listed as associated, and no larger than fit.
 */
final class AttachmentReader {
  private static final int MOST_FILES = 200;

  private static final String AGAIN = "use the sheet as coilwright wrote it";

  private AttachmentReader() {}

  static Map<String, byte[]> files(COSDictionary catalog) throws IOException, Unfit {
    Map<String, byte[]> files = new HashMap<>();
    COSArray associated = catalog.getCOSArray(COSName.AF);
    int left = LargestSheet.BYTES;
    for (int i = 0; associated != null && i < associated.size(); i++) {
      if (i >= MOST_FILES) {
        throw new Unfit("it has more attached files than any sheet", AGAIN);
      }
      if (associated.getObject(i) instanceof COSDictionary file) {
        String name =
            Optional.ofNullable(file.getString(COSName.UF))
                .orElseGet(() -> Optional.ofNullable(file.getString(COSName.F)).orElse(""));
        Optional<COSStream> stream = embedded(file);
        if (name.isEmpty() || stream.isEmpty()) {
          throw new Unfit("an attached file lacks its name or its bytes", AGAIN);
        }
        byte[] bytes = unpacked(stream.get(), left);
        left -= bytes.length;
        if (files.put(name, bytes) != null) {
          throw new Unfit("it has two attached files with the same name", AGAIN);
        }
      }
    }
    return files;
  }

  private static Optional<COSStream> embedded(COSDictionary file) {
    COSDictionary versions = file.getCOSDictionary(COSName.EF);
    if (versions == null) {
      return Optional.empty();
    }
    COSBase unicode = versions.getDictionaryObject(COSName.UF);
    COSBase stream = unicode == null ? versions.getDictionaryObject(COSName.F) : unicode;
    return stream instanceof COSStream found ? Optional.of(found) : Optional.empty();
  }

  /** Unpacked here and not by the library, which has no bound. */
  static byte[] unpacked(COSStream stream, int most) throws IOException, Unfit {
    COSBase filters = stream.getFilters();
    boolean single = filters instanceof COSArray array && array.size() == 1;
    COSBase filter = single ? ((COSArray) filters).getObject(0) : filters;
    boolean plain = filter == null || (filter instanceof COSArray none && none.size() == 0);
    if (!plain && !COSName.FLATE_DECODE.equals(filter)) {
      throw new Unfit("something in it is packed in a way no sheet uses", AGAIN);
    }
    try (InputStream raw = stream.createRawInputStream();
        InputStream in = plain ? raw : new InflaterInputStream(raw)) {
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      byte[] some = new byte[1 << 13];
      for (int read = in.read(some); read >= 0; read = in.read(some)) {
        out.write(some, 0, read);
        if (out.size() > most) {
          throw new Unfit("something in it is larger than in any sheet", AGAIN);
        }
      }
      return out.toByteArray();
    }
  }
}
