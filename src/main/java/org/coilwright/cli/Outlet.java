package org.coilwright.cli;

import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;

/** An output of the process, in UTF-8, that remembers why it could not be written to its end. */
final class Outlet extends PrintStream {
  private final Remembering remembering;

  private Outlet(Remembering remembering) {
    super(new BufferedOutputStream(remembering, 1 << 13), false, StandardCharsets.UTF_8);
    this.remembering = remembering;
  }

  /** One of the process's own. */
  static Outlet of(FileDescriptor descriptor) {
    return to(new FileOutputStream(descriptor));
  }

  /** One that writes into a stream. */
  static Outlet to(OutputStream stream) {
    return new Outlet(new Remembering(stream));
  }

  /** True if whoever read went away, as {@code head} does when it has seen enough. */
  boolean isHungUp() {
    String why =
        remembering.failure.map(IOException::getMessage).orElse("").toLowerCase(Locale.ROOT);
    return why.contains("broken pipe") || why.contains("pipe is being closed");
  }

  private static final class Remembering extends FilterOutputStream {
    private Optional<IOException> failure = Optional.empty();

    Remembering(OutputStream to) {
      super(to);
    }

    @Override
    public void write(byte[] bytes, int from, int count) throws IOException {
      try {
        out.write(bytes, from, count);
      } catch (IOException e) {
        failure = Optional.of(e);
        throw e;
      }
    }
  }
}
