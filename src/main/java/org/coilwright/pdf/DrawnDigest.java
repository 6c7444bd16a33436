package org.coilwright.pdf;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSBoolean;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.cos.COSObject;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.cos.COSString;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;

/**
 * Digests of what pages draw: their contents, fonts, pictures and boxes, unpacked and in one order,
 * so that it does not matter how a program packed, numbered or sorted them.
 */
final class DrawnDigest {
  private static final int DEEPEST = 40;

  /** Says nothing about the look, or leads out of the page. */
  private static final Set<COSName> OTHER =
      Set.of(
          COSName.LENGTH,
          COSName.FILTER,
          COSName.PARENT,
          COSName.P,
          COSName.METADATA,
          COSName.STRUCT_PARENT,
          COSName.STRUCT_PARENTS,
          COSName.getPDFName("PieceInfo"),
          COSName.getPDFName("LastModified"),
          COSName.getPDFName("ProcSet"));

  private final IdentityHashMap<COSBase, byte[]> known = new IdentityHashMap<>();
  private int left = LargestSheet.BYTES;

  /** Of one page, without its annotations. */
  String of(PDPage page) throws IOException {
    MessageDigest digest = sha256();
    COSBase contents = page.getCOSObject().getDictionaryObject(COSName.CONTENTS);
    if (contents instanceof COSArray parts) {
      for (int i = 0; i < parts.size(); i++) {
        content(digest, parts.getObject(i));
      }
    } else if (contents != null) {
      content(digest, contents);
    }
    PDResources resources = page.getResources();
    digest.update(resources == null ? new byte[0] : of(resources.getCOSObject(), 0));
    for (COSArray box :
        List.of(page.getMediaBox().getCOSArray(), page.getCropBox().getCOSArray())) {
      digest.update(of(box, 0));
    }
    put(digest, "turned " + page.getRotation() + " unit " + page.getUserUnit());
    return HexFormat.of().formatHex(digest.digest());
  }

  private void content(MessageDigest digest, COSBase part) throws IOException {
    if (part instanceof COSStream stream) {
      digest.update(bytes(stream));
      digest.update((byte) '\n');
    }
  }

  private byte[] of(COSBase base, int depth) throws IOException {
    COSBase object = base instanceof COSObject reference ? reference.getObject() : base;
    if (object == null || depth > DEEPEST) {
      return new byte[0];
    }
    byte[] before = known.get(object);
    if (before != null) {
      return before;
    }
    boolean compound = object instanceof COSDictionary || object instanceof COSArray;
    if (compound) {
      known.put(object, new byte[] {0}); // met again within itself
    }
    MessageDigest digest = sha256();
    if (object instanceof COSDictionary dictionary) {
      put(digest, "dictionary");
      List<COSName> keys =
          dictionary.keySet().stream()
              .filter(key -> !OTHER.contains(key))
              .sorted(Comparator.comparing(COSName::getName))
              .toList();
      for (COSName key : keys) {
        put(digest, key.getName());
        digest.update(of(dictionary.getItem(key), depth + 1));
      }
      if (dictionary instanceof COSStream stream) {
        digest.update(bytes(stream));
      }
    } else if (object instanceof COSArray array) {
      put(digest, "array");
      for (COSBase element : array) {
        digest.update(of(element, depth + 1));
      }
    } else {
      put(digest, plain(object));
    }
    byte[] of = digest.digest();
    if (compound) {
      known.put(object, of);
    }
    return of;
  }

  /** Programs write the same number with more or fewer digits. */
  private static String plain(COSBase object) {
    if (object instanceof COSNumber number) {
      return "number " + Math.round(number.floatValue() * 1000d);
    } else if (object instanceof COSName name) {
      return "name " + name.getName();
    } else if (object instanceof COSString string) {
      return "string " + string.toHexString();
    } else if (object instanceof COSBoolean truth) {
      return "truth " + truth.getValue();
    }
    return "nothing";
  }

  /** Unpacked where that can be bounded; else as it lies there. */
  private byte[] bytes(COSStream stream) throws IOException {
    byte[] bytes;
    try {
      bytes = AttachmentReader.unpacked(stream, left);
    } catch (Unfit e) {
      try (InputStream raw = stream.createRawInputStream()) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        raw.transferTo(out);
        bytes = out.toByteArray();
      }
    }
    left -= Math.min(left, bytes.length);
    return bytes;
  }

  private static void put(MessageDigest digest, String text) {
    digest.update(text.getBytes(StandardCharsets.UTF_8));
    digest.update((byte) 0);
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
