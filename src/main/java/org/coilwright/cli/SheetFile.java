package org.coilwright.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;
import org.coilwright.pdf.LargestSheet;
import org.coilwright.pdf.Returned;
import org.coilwright.pdf.SheetReader;

/** A PDF that somebody gave back, from a file or standard input. */
final class SheetFile {
  private static final String CHECK = "check the path";

  private SheetFile() {}

  /** Opened, or why not. */
  @SuppressWarnings("ArrayRecordComponent") // handed on, never compared
  record Opened(byte[] bytes, Returned returned) {}

  /** Reads what {@code name} stands for; {@code -} is standard input. */
  static Opened open(String name, InputStream stdin) {
    try {
      if (name.equals(InputFile.STDIN)) {
        return bounded(stdin);
      }
      Path path = Path.of(name);
      Optional<String> tooLong = FileNames.tooLong(path);
      if (tooLong.isPresent()) {
        return refused(tooLong.get(), CHECK);
      }
      if (name.isBlank() || Files.isDirectory(path)) {
        return refused("it is a folder", "name the PDF in it");
      }
      try (InputStream in = Files.newInputStream(path)) {
        return bounded(in);
      }
    } catch (NoSuchFileException e) {
      return refused("there is no such file", CHECK);
    } catch (AccessDeniedException e) {
      return refused("it may not be read by this user", "change its permissions, or copy it");
    } catch (InvalidPathException e) {
      return refused("no file can have this name", CHECK);
    } catch (IOException e) {
      return refused(
          "it cannot be read: " + Objects.requireNonNullElse(e.getMessage(), "unknown"),
          "check the disk, or copy the file elsewhere");
    }
  }

  private static Opened bounded(InputStream in) throws IOException {
    byte[] bytes = in.readNBytes(LargestSheet.BYTES + 1);
    if (bytes.length > LargestSheet.BYTES) {
      return refused(
          "it is larger than " + LargestSheet.words() + ", far larger than any sheet",
          "check that this is the file you mean");
    }
    return new Opened(bytes, SheetReader.read(bytes));
  }

  private static Opened refused(String what, String remedy) {
    return new Opened(new byte[0], new Returned.Unusable(what, remedy));
  }
}
