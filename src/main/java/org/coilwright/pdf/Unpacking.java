package org.coilwright.pdf;

import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;

/**
 * How much a PDF unpacks to, found out on its bytes before the library, which has no bound, sees
 * them: every stream that is packed as sheets are is unpacked here and thrown away. What is packed
 * twice is counted at each level.
 */
final class Unpacking {
  /** A sheet of a hundred circuits stays far below this; unpacking as much takes a second. */
  static final int MOST_BYTES = 128 << 20;

  /**
   * How much there may be in it to keep, in words: a number is one, a list three, a dictionary
   * four. The library holds some thirty bytes for each.
   */
  static final int MOST_WORDS = 6_000_000;

  /** Each page, font, picture and attached file is one. */
  private static final int MOST_STREAMS = 10_000;

  private static final int DEEPEST = 4;
  private static final int BLOCK = 1 << 16;
  private static final int MOST_DICTIONARY = 1 << 12;
  private static final byte[] STREAM = "stream".getBytes(StandardCharsets.US_ASCII);

  private static final String USUAL = "fill in the sheet as coilwright wrote it";

  /** Ways to pack that make much of little and that no sheet uses. */
  private static final Set<String> UNUSUAL =
      Set.of("LZWDecode", "LZW", "RunLengthDecode", "RL", "ASCIIHexDecode", "AHx", "ASCII85Decode");

  private static final Pattern NAME = Pattern.compile("/([^\\s/\\[\\]<>(){}%]*)");
  private static final Pattern ESCAPED = Pattern.compile("#([0-9A-Fa-f]{2})");

  /** What a byte may begin, in words. */
  private static final byte[] WORDS = new byte[256];

  static {
    String before = "\0\t\n\f\r /(";
    for (int i = 0; i < before.length(); i++) {
      WORDS[before.charAt(i)] = 1;
    }
    WORDS['<'] = 2;
    WORDS['['] = 3;
  }

  private final byte[] pdf;
  private final byte[][] blocks = new byte[DEEPEST][];
  private long left = MOST_BYTES;
  private long words;

  private Unpacking(byte[] pdf) {
    this.pdf = pdf;
  }

  /** Refuses a file that unpacks to more than any sheet, or whose tables are packed oddly. */
  static void refuse(byte[] pdf) throws Unfit {
    new Unpacking(pdf).refuse();
  }

  private void refuse() throws Unfit {
    count(pdf, pdf.length);
    int streams = 0;
    for (int at = next(0); at >= 0; at = next(at)) {
      if (++streams > MOST_STREAMS) {
        throw new Unfit(
            "it has more than " + MOST_STREAMS + " parts, far more than any sheet", USUAL);
      }
      boolean objects = holdsObjects(at - STREAM.length);
      int from = at;
      while (from < pdf.length && (pdf[from] == '\r' || pdf[from] == '\n' || pdf[from] == ' ')) {
        from++;
      }
      if (isPacked(pdf, from, pdf.length)) {
        Inflater inflater = new Inflater();
        try {
          inflater.setInput(pdf, from, pdf.length - from);
          unpack(inflater, objects, 0);
          // what unpacks to nothing takes time as well
          take(inflater.getBytesRead());
        } finally {
          inflater.end();
        }
      }
    }
  }

  /** Where the next stream's keyword ends; -1 if there is none. */
  private int next(int from) {
    for (int i = from; i + STREAM.length <= pdf.length; i++) {
      int k = 0;
      while (k < STREAM.length && pdf[i + k] == STREAM[k]) {
        k++;
      }
      // "endstream" ends one
      if (k == STREAM.length && !(i > 0 && pdf[i - 1] == 'd')) {
        return i + STREAM.length;
      }
    }
    return -1;
  }

  /** The beginning of what a deflating program writes. */
  private static boolean isPacked(byte[] bytes, int from, int to) {
    return to - from > 2
        && (bytes[from] & 0x0f) == 8
        && (((bytes[from] & 0xff) << 8) | (bytes[from + 1] & 0xff)) % 31 == 0;
  }

  private void unpack(Inflater outer, boolean objects, int depth) throws Unfit {
    if (depth == DEEPEST) {
      throw new Unfit("something in it is packed many times over", USUAL);
    }
    if (blocks[depth] == null) {
      blocks[depth] = new byte[BLOCK];
    }
    byte[] block = blocks[depth];
    Inflater inner = new Inflater();
    boolean first = true;
    boolean nested = false;
    try {
      for (int n = inflated(outer, block); n > 0; n = inflated(outer, block)) {
        take(n);
        if (objects) {
          count(block, n);
        }
        nested = first ? isPacked(block, 0, n) : nested;
        first = false;
        if (nested) {
          inner.setInput(block, 0, n);
          unpack(inner, objects, depth + 1);
        }
      }
    } finally {
      inner.end();
    }
  }

  private void count(byte[] bytes, int length) throws Unfit {
    long found = 0;
    for (int i = 0; i < length; i++) {
      found += WORDS[bytes[i] & 0xff];
    }
    words += found;
    if (words > MOST_WORDS) {
      throw new Unfit("there is far more in it than in any sheet", USUAL);
    }
  }

  private void take(long bytes) throws Unfit {
    left -= bytes;
    if (left < 0) {
      throw new Unfit(
          "it unpacks to more than " + (MOST_BYTES >> 20) + " MiB, far more than any sheet", USUAL);
    }
  }

  /** How many bytes came; none at the end, where more is needed, and where it is damaged. */
  private static int inflated(Inflater inflater, byte[] into) {
    try {
      return inflater.inflate(into);
    } catch (DataFormatException e) {
      return 0;
    }
  }

  /**
   * Whether the stream whose dictionary ends here holds objects, which are kept, and not the marks
   * of a page. Refuses a table of objects that is packed oddly: it is unpacked as soon as the file
   * is opened. {@code W}, its columns, stands in its dictionary and in no other's that is packed
   * so.
   */
  private boolean holdsObjects(int end) throws Unfit {
    String before =
        new String(
            pdf,
            Math.max(0, end - MOST_DICTIONARY),
            Math.min(end, MOST_DICTIONARY),
            StandardCharsets.ISO_8859_1);
    String dictionary = before.substring(Math.max(0, before.lastIndexOf("obj")));
    boolean table = false;
    boolean unusual = false;
    boolean objects = false;
    Matcher names = NAME.matcher(dictionary);
    while (names.find()) {
      String name =
          ESCAPED
              .matcher(names.group(1))
              .replaceAll(
                  hex ->
                      Matcher.quoteReplacement(
                          Character.toString(Integer.parseInt(hex.group(1), 16))));
      table |= name.equals("W") || name.equals("XRef") || name.equals("ObjStm");
      unusual |= UNUSUAL.contains(name);
      objects |= name.equals("First") || name.equals("ObjStm");
    }
    if (table && unusual) {
      throw new Unfit("something in it is packed in a way no sheet uses", USUAL);
    }
    return objects;
  }
}
