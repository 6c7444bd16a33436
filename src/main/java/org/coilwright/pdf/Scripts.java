package org.coilwright.pdf;

import java.util.ArrayDeque;
import java.util.Collections;
import java.util.Deque;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSDocument;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObject;
import org.apache.pdfbox.cos.COSObjectKey;

/**
 * Looks for what would make a viewer do something. Nothing here would run it; but a sheet that
 * carries it was not left as it was printed, and its values may have been put there by a script.
 */
final class Scripts {
  private static final Set<String> ACTIONS =
      Set.of(
          "JavaScript",
          "Launch",
          "SubmitForm",
          "ImportData",
          "ResetForm",
          "Hide",
          "Rendition",
          "Movie",
          "Sound",
          "GoToR",
          "GoToE",
          "RichMediaExecute");

  private Scripts() {}

  /** Refuses a document that carries such a thing anywhere. */
  static void refuse(COSDocument document) throws Unfit {
    Set<COSBase> seen = Collections.newSetFromMap(new IdentityHashMap<>());
    Deque<COSBase> open = new ArrayDeque<>();
    open.add(document.getTrailer());
    for (COSObjectKey key : List.copyOf(document.getXrefTable().keySet())) {
      open.add(document.getObjectFromPool(key));
    }
    while (!open.isEmpty()) {
      COSBase base = open.pop();
      COSBase object = base instanceof COSObject reference ? reference.getObject() : base;
      if (object == null || !seen.add(object)) {
        continue;
      }
      if (object instanceof COSDictionary dictionary) {
        refuse(dictionary);
        open.addAll(dictionary.getValues());
      } else if (object instanceof COSArray array) {
        array.forEach(open::add);
      }
    }
  }

  private static void refuse(COSDictionary dictionary) throws Unfit {
    String action = dictionary.getNameAsString(COSName.S);
    if (dictionary.containsKey(COSName.JS) || (action != null && ACTIONS.contains(action))) {
      throw new Unfit(
          "it carries a script or an action (" + (action == null ? "JavaScript" : action) + ")",
          "fill in the sheet as coilwright wrote it, which carries none");
    }
  }
}
