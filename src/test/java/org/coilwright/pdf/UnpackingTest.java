package org.coilwright.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Small files that unpack to gigabytes, made by hand: refused before they are unpacked. */
class UnpackingTest {
  private static byte[] deflated(byte[] head, long blanks) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    byte[] some = " ".repeat(1 << 16).getBytes(StandardCharsets.US_ASCII);
    try (OutputStream to = new DeflaterOutputStream(out, new Deflater(Deflater.BEST_COMPRESSION))) {
      to.write(head);
      for (long left = blanks; left > 0; left -= some.length) {
        to.write(some, 0, (int) Math.min(left, some.length));
      }
    }
    return out.toByteArray();
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }

  /** So many streams of objects, one object in each, and a table that says so. */
  private static byte[] holders(int count, String dictionary, byte[] packed) throws IOException {
    ByteArrayOutputStream pdf = new ByteArrayOutputStream();
    ByteArrayOutputStream table = new ByteArrayOutputStream();
    entry(table, 0, 0);
    pdf.write(ascii("%PDF-1.7\n"));
    entry(table, 1, pdf.size());
    pdf.write(ascii("1 0 obj\n<</Type/Catalog/Pages 2 0 R>>\nendobj\n"));
    entry(table, 1, pdf.size());
    pdf.write(ascii("2 0 obj\n<</Type/Pages/Kids[]/Count 0>>\nendobj\n"));
    for (int i = 0; i < count; i++) {
      entry(table, 1, pdf.size());
      pdf.write(
          ascii("%d 0 obj\n<<%s/Length %d>>stream\n".formatted(3 + i, dictionary, packed.length)));
      pdf.write(packed);
      pdf.write(ascii("\nendstream\nendobj\n"));
    }
    for (int i = 0; i < count; i++) {
      entry(table, 2, 3 + i);
    }
    int start = pdf.size();
    byte[] entries = deflated(table.toByteArray(), 0);
    pdf.write(
        ascii(
            "%d 0 obj\n<</Type/XRef/Size %d/W[1 4 1]/Root 1 0 R/Filter/FlateDecode/Length %d>>stream\n"
                .formatted(3 + 2 * count, 3 + 2 * count, entries.length)));
    pdf.write(entries);
    pdf.write(ascii("\nendstream\nendobj\nstartxref\n" + start + "\n%%EOF\n"));
    return pdf.toByteArray();
  }

  private static void entry(ByteArrayOutputStream table, int kind, int value) {
    table.write(kind);
    for (int shift = 24; shift >= 0; shift -= 8) {
      table.write(value >> shift);
    }
    table.write(0);
  }

  private static void assertRefused(byte[] pdf, String why) {
    Returned returned = SheetReader.read(pdf);
    assertTrue(returned instanceof Returned.Unusable, returned.toString());
    String what = ((Returned.Unusable) returned).what();
    assertTrue(what.contains(why), what);
  }

  private static final String HOLDER = "/Type/ObjStm/N 1/First 4/Filter/FlateDecode";

  @Test
  void streams_of_objects_that_unpack_to_gigabytes() throws IOException {
    byte[] packed = deflated(ascii("9 0 <<>>"), 60 << 20);
    assertRefused(holders(50, HOLDER, packed), "far more in it than in any sheet");
    assertRefused(holders(50, "/N 1/Fir#73t 4/Filter 9 0 R", packed), "far more in it");
    assertRefused(holders(50, "/Filter/FlateDecode", packed), "it unpacks to more than 128 MiB");
  }

  @Test
  void what_is_packed_twice_is_counted_at_each_level() throws IOException {
    byte[] twice = deflated(deflated(ascii("9 0 <<>>"), 1L << 28), 0);
    assertTrue(twice.length < 100_000, "length " + twice.length);
    assertRefused(holders(1, "/Filter[/FlateDecode/FlateDecode]", twice), "it unpacks to more");
    byte[] deep = ascii("9 0 <<>>");
    for (int i = 0; i < 6; i++) {
      deep = deflated(deep, 0);
    }
    assertRefused(holders(1, HOLDER, deep), "packed many times over");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/Type/ObjStm/N 1/First 4/Filter/LZWDecode",
        "/Type/Obj#53tm/N 1/First 4/Filter[/FlateDecode /RunLength#44ecode]",
        "/N 1/First 4/Filter[/FlateDecode /FlateDecode]",
        "/N 1/First 4/Filter/LZWDecode",
        "/N 1/First 4/W [1 2 1]/Filter/ASCIIHexDecode"
      })
  void objects_that_are_packed_as_in_no_sheet(String dictionary) throws IOException {
    byte[] packed = deflated(ascii("5 0 <<>>"), 0);
    assertRefused(holders(1, dictionary, packed), "packed in a way no sheet uses");
  }

  @Test
  void more_objects_than_any_sheet_has_packed_or_not() throws IOException {
    String many = "<<>>".repeat(2_000_000);
    assertRefused(holders(1, HOLDER, deflated(ascii("9 0 [" + many + "]"), 0)), "far more in it");
    assertRefused(ascii("%PDF-1.7\n1 0 obj [" + many + "] endobj\n%%EOF"), "far more in it");
    assertRefused(
        ascii("%PDF-1.7\n1 0 obj [" + " 123".repeat(7_000_000) + "] endobj\n%%EOF"),
        "far more in it");
  }

  @Test
  void more_streams_than_any_sheet_has() {
    assertRefused(
        ascii("%PDF-1.7\n" + "stream\n".repeat(20_000) + "%%EOF"), "more than 10000 parts");
  }

  /** The same file with little in it gets as far as having no form and no attached files. */
  @Test
  void objects_in_a_stream_are_no_fault_by_themselves() throws IOException {
    Returned returned = SheetReader.read(holders(1, HOLDER, deflated(ascii("5 0 <<>>"), 0)));
    assertTrue(returned instanceof Returned.Sheet, returned.toString());
    assertEquals(0, ((Returned.Sheet) returned).files().size());
  }
}
