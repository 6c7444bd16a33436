package org.coilwright.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** Which coilwright this is. */
public final class Version {
  private Version() {}

  /**
   * Whether the classes come from an archive, as a sentence; the launcher says which it named. Java
   * shares classes from that archive or, where it does not fit, from none.
   */
  static String archive() {
    String named = System.getProperty("org.coilwright.archive", "");
    boolean shared = System.getProperty("java.vm.info", "").contains("sharing");
    if (named.isEmpty()) {
      return "Class archive: none was named.";
    }
    return shared
        ? "Class archive: " + named + " is in use."
        : "Class archive: " + named + " does not fit this Java and is not in use.";
  }

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
