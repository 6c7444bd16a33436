package org.coilwright.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import org.coilwright.checklist.FilledIn;
import org.coilwright.pdf.Returned;
import org.coilwright.pdf.SheetReader;

/**
 * Sheets that somebody has filled in or signed, and final records: nothing is written over them.
 */
final class KeptSheets {
  private static final byte[] PDF = "%PDF-".getBytes(StandardCharsets.US_ASCII);
  private static final int MOST_BYTES = 32 << 20;

  private KeptSheets() {}

  /**
   * Why a file must stay, as the end of a sentence; empty if it may go or is not there.
   *
   * @param coming what would stand in its place; the same bytes lose nothing
   */
  static Optional<String> refusal(Path target, byte[] coming) {
    try {
      if (!Files.isRegularFile(target) || !startsAsPdf(target) || holds(target, coming)) {
        return Optional.empty();
      }
      if (Files.size(target) > MOST_BYTES) {
        return Optional.of("is a large PDF that may be filled in.");
      }
      Returned returned = SheetReader.read(Files.readAllBytes(target));
      if (returned instanceof Returned.Sheet sheet && isRecord(sheet)) {
        return Optional.of("is a final record and is not written over.");
      }
      boolean empty =
          returned instanceof Returned.Sheet sheet && sheet.filledIn().equals(FilledIn.NOTHING);
      return empty ? Optional.empty() : Optional.of(why(returned));
    } catch (IOException e) {
      return Optional.of("cannot be looked into, so it may be filled in.");
    }
  }

  private static String why(Returned returned) {
    return returned instanceof Returned.Unusable unusable
        ? "may be filled in, but " + unusable.what() + "."
        : "is filled in or signed and is not written over.";
  }

  /** A record's only field is empty until it is signed, so it is told by what travels in it. */
  static boolean isRecord(Returned.Sheet sheet) {
    return sheet.files().containsKey(SheetFiles.READINGS)
        || sheet.files().containsKey(SheetFiles.FILLED_IN);
  }

  private static boolean holds(Path target, byte[] bytes) throws IOException {
    return Files.size(target) == bytes.length && Arrays.equals(Files.readAllBytes(target), bytes);
  }

  static boolean startsAsPdf(Path target) throws IOException {
    try (InputStream in = Files.newInputStream(target)) {
      return Arrays.equals(in.readNBytes(PDF.length), PDF);
    }
  }
}
