package org.coilwright.cli;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * A file, read piece by piece: beside its heap Java takes as much memory as is asked for at once,
 * and of that the launcher leaves it 8 MB.
 */
final class FileBytes {
  private FileBytes() {}

  /**
   * All of its bytes.
   *
   * @throws IOException if it cannot be read
   */
  static byte[] of(Path file) throws IOException {
    try (InputStream in = new BufferedInputStream(Files.newInputStream(file))) {
      return in.readAllBytes();
    }
  }
}
