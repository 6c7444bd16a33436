package org.coilwright.pdf;

import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDocument;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObject;
import org.apache.pdfbox.cos.COSObjectKey;
import org.apache.pdfbox.cos.COSStream;

/**
 * Streams that hold further objects. The library unpacks one as soon as an object in it is asked
 * for; {@link Unpacking} has bounded those that are packed as sheets are, and others are refused.
 */
final class PackedObjects {
  private PackedObjects() {}

  static void refuse(COSDocument document) throws Unfit {
    Set<Long> holders = new LinkedHashSet<>();
    for (Map.Entry<COSObjectKey, Long> entry : document.getXrefTable().entrySet()) {
      // an object in a stream has that stream's number here, negative, and others their place
      if (entry.getValue() < 0) {
        holders.add(-entry.getValue());
      }
    }
    for (long number : holders) {
      COSObject holder = document.getObjectFromPool(new COSObjectKey(number, 0));
      if (holder != null && holder.getObject() instanceof COSStream stream && isUnusual(stream)) {
        throw new Unfit(
            "something in it is packed in a way no sheet uses",
            "fill in the sheet as coilwright wrote it");
      }
    }
  }

  private static boolean isUnusual(COSStream stream) {
    COSBase filters = stream.getFilters();
    if (filters instanceof COSArray several) {
      return several.size() > 1
          || (several.size() == 1 && !COSName.FLATE_DECODE.equals(several.getObject(0)));
    }
    return filters != null && !COSName.FLATE_DECODE.equals(filters);
  }
}
