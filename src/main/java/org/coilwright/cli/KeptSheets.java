package org.coilwright.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import org.coilwright.checklist.FilledIn;
import org.coilwright.pdf.LargestSheet;
import org.coilwright.pdf.Returned;
import org.coilwright.pdf.Seal;
import org.coilwright.pdf.SheetReader;

/**
 * What no sheet is written over: everything but an untouched sheet. So a scan, a flattened copy,
 * one with notes in ink, one filled in or signed, a final record, and a PDF of somebody else stay.
 */
final class KeptSheets {
  private static final byte[] PDF = "%PDF-".getBytes(StandardCharsets.US_ASCII);

  private KeptSheets() {}

  /**
   * Why a file must stay, as the end of a sentence; empty if it may go or is not there.
   *
   * @param coming what would stand in its place; the same bytes lose nothing
   */
  static Optional<String> refusal(Path target, byte[] coming) {
    try {
      boolean nothing = !Files.isRegularFile(target) || Files.size(target) == 0;
      if (nothing || holds(target, coming)) {
        return Optional.empty();
      }
      if (!startsAsPdf(target)) {
        return Optional.of("is no PDF, whatever its name says.");
      }
      if (Files.size(target) > LargestSheet.BYTES) {
        return Optional.of("is a large PDF that may be filled in.");
      }
      byte[] bytes = FileBytes.of(target);
      if (Seal.isWhole(bytes)) {
        return Optional.empty();
      }
      Returned returned = SheetReader.read(bytes);
      if (returned instanceof Returned.Sheet sheet && isRecord(sheet)) {
        return Optional.of("is a final record and is not written over.");
      }
      return Optional.of(why(returned));
    } catch (IOException e) {
      return Optional.of("cannot be looked into, so it may be filled in.");
    }
  }

  private static String why(Returned returned) {
    if (returned instanceof Returned.Sheet sheet) {
      return !sheet.files().containsKey(SheetFiles.RESULTS)
          ? "is no sheet of coilwright's and is not written over."
          : sheet.filledIn().equals(FilledIn.NOTHING)
              ? "was changed since it was printed and is not written over."
              : "is filled in or signed and is not written over.";
    }
    return returned instanceof Returned.Unusable unusable
        ? "may be filled in, but " + unusable.what() + "."
        : "is not written over.";
  }

  /** A record's only field is empty until it is signed, so it is told by what travels in it. */
  static boolean isRecord(Returned.Sheet sheet) {
    return sheet.files().containsKey(SheetFiles.READINGS)
        || sheet.files().containsKey(SheetFiles.FILLED_IN);
  }

  private static boolean holds(Path target, byte[] bytes) throws IOException {
    return Files.size(target) == bytes.length && Arrays.equals(FileBytes.of(target), bytes);
  }

  private static boolean startsAsPdf(Path target) throws IOException {
    try (InputStream in = Files.newInputStream(target)) {
      return Arrays.equals(in.readNBytes(PDF.length), PDF);
    }
  }
}
