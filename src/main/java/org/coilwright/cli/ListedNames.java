package org.coilwright.cli;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Iterator;
import java.util.NoSuchElementException;
import org.jspecify.annotations.Nullable;

/**
 * Names of files, a line each, taken from a stream as they are asked for, so that any number of
 * them takes no room. Empty lines are left out.
 */
final class ListedNames implements Iterator<String> {
  /** Longer than any system lets a path be: what is cut off here names no file. */
  private static final int LONGEST = 1 << 13;

  private final InputStream in;
  private @Nullable String next;
  private boolean ended;

  ListedNames(InputStream in) {
    this.in = new BufferedInputStream(in);
  }

  @Override
  public boolean hasNext() {
    while (next == null && !ended) {
      String line = line();
      next = line.isBlank() ? null : line;
    }
    return next != null;
  }

  @Override
  public String next() {
    if (!hasNext() || next == null) {
      throw new NoSuchElementException();
    }
    // a name in a list is a file's name, never standard input
    String name = next.equals(InputFile.STDIN) ? "./" + next : next;
    next = null;
    return name;
  }

  private String line() {
    ByteArrayOutputStream line = new ByteArrayOutputStream();
    try {
      int read = in.read();
      while (read >= 0 && read != '\n') {
        if (line.size() < LONGEST) {
          line.write(read);
        }
        read = in.read();
      }
      ended = read < 0;
    } catch (IOException e) {
      throw new UncheckedIOException("the names cannot be read to their end", e);
    }
    String text = line.toString(StandardCharsets.UTF_8);
    return text.endsWith("\r") ? text.substring(0, text.length() - 1) : text;
  }
}
