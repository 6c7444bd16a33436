package org.coilwright.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** Which coilwright this is. */
public final class Version {
  private Version() {}

  /** The version the build wrote down. */
  public static String text() {
    try (InputStream in = Version.class.getResourceAsStream("version.txt")) {
      if (in == null) {
        throw new IllegalStateException("the build left out version.txt");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8).strip();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
