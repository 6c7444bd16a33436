package org.coilwright.pdf;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/**
 * What the greys and colours of the pages mean, as an ICC profile (version 2.1): the primaries of
 * IEC 61966-2-1 seen under D50, with a plain power of 2.2 in place of its curve. Written here, so
 * that nobody's file has to be carried along.
 */
final class ColourProfile {
  private static final int HEADER = 128;
  private static final int ENTRY = 12;
  private static final String NAME = "RGB, gamma 2.2";

  private static final double[] WHITE = {0.9642, 1, 0.8249};
  private static final double[] RED = {0.4361, 0.2225, 0.0139};
  private static final double[] GREEN = {0.3851, 0.7169, 0.0971};
  private static final double[] BLUE = {0.1431, 0.0606, 0.7141};

  private ColourProfile() {}

  /** The profile's bytes, always the same. */
  static byte[] bytes() {
    String[] names = {"desc", "cprt", "wtpt", "rXYZ", "gXYZ", "bXYZ", "rTRC", "gTRC", "bTRC"};
    byte[][] tags = {
      description(),
      copyright(),
      xyz(WHITE),
      xyz(RED),
      xyz(GREEN),
      xyz(BLUE),
      curve(),
      curve(),
      curve()
    };
    int at = HEADER + 4 + ENTRY * tags.length;
    int size = at;
    for (byte[] tag : tags) {
      size += tag.length;
    }
    int whole = size;
    int first = at;
    return written(
        out -> {
          header(out, whole);
          out.writeInt(tags.length);
          int offset = first;
          for (int i = 0; i < tags.length; i++) {
            out.writeBytes(names[i]);
            out.writeInt(offset);
            out.writeInt(tags[i].length);
            offset += tags[i].length;
          }
          for (byte[] tag : tags) {
            out.write(tag);
          }
        });
  }

  private static void header(DataOutputStream out, int size) throws IOException {
    out.writeInt(size);
    out.writeInt(0); // no preferred colour management
    out.writeInt(0x02100000); // version 2.1
    out.writeBytes("mntrRGB XYZ ");
    for (int part : new int[] {2026, 1, 1, 0, 0, 0}) {
      out.writeShort(part);
    }
    out.writeBytes("acsp");
    out.write(new byte[28]); // platform, flags, device, attributes, intent
    xyzNumbers(out, WHITE);
    out.write(new byte[48]); // creator, reserved
  }

  private static byte[] description() {
    return written(
        out -> {
          out.writeBytes("desc");
          out.writeInt(0);
          out.writeInt(NAME.length() + 1);
          out.write((NAME + "\0").getBytes(StandardCharsets.US_ASCII));
          out.write(new byte[4 + 4 + 2 + 1 + 67]); // no Unicode and no script form of it
          pad(out);
        });
  }

  private static byte[] copyright() {
    return written(
        out -> {
          out.writeBytes("text");
          out.writeInt(0);
          out.write("No rights are claimed.\0".getBytes(StandardCharsets.US_ASCII));
          pad(out);
        });
  }

  private static byte[] xyz(double[] values) {
    return written(
        out -> {
          out.writeBytes("XYZ ");
          out.writeInt(0);
          xyzNumbers(out, values);
        });
  }

  private static byte[] curve() {
    return written(
        out -> {
          out.writeBytes("curv");
          out.writeInt(0);
          out.writeInt(1);
          out.writeShort((int) Math.round(2.2 * 256));
          pad(out);
        });
  }

  private static void xyzNumbers(DataOutputStream out, double[] values) throws IOException {
    for (double value : values) {
      out.writeInt((int) Math.round(value * 65536));
    }
  }

  private static void pad(DataOutputStream out) throws IOException {
    while (out.size() % 4 != 0) {
      out.write(0);
    }
  }

  private interface Part {
    void write(DataOutputStream out) throws IOException;
  }

  private static byte[] written(Part part) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (DataOutputStream out = new DataOutputStream(bytes)) {
      part.write(out);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }
}
