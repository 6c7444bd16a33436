package org.coilwright.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;

/** Names that no file can have. */
final class FileNames {
  /** Of one name, in bytes: what the usual file systems of Linux, macOS and Windows take. */
  private static final int LONGEST = 255;

  /** Of a whole path, in bytes: what Linux takes, its end included. */
  private static final int LONGEST_PATH = 4095;

  private FileNames() {}

  /** That a name is too long, as a sentence without its full stop; empty if it is not. */
  static Optional<String> tooLong(Path path) {
    for (Path part : path) {
      int bytes = bytes(part);
      if (bytes > LONGEST) {
        return Optional.of(
            "its name is too long: "
                + bytes
                + " bytes, and the name of a file or folder has at most "
                + LONGEST);
      }
    }
    int whole = bytes(path);
    return whole > LONGEST_PATH
        ? Optional.of(
            "its path is too long: " + whole + " bytes, and it has at most " + LONGEST_PATH)
        : Optional.empty();
  }

  private static int bytes(Path path) {
    return path.toString().getBytes(StandardCharsets.UTF_8).length;
  }
}
