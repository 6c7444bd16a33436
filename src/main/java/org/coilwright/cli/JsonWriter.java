package org.coilwright.cli;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;

/** Writes JSON piece by piece, with nothing between it and the text. */
final class JsonWriter {
  /** Far finer than any figure here is known, and coarse enough to be the same on every machine. */
  private static final MathContext DIGITS = new MathContext(9);

  private final StringBuilder out = new StringBuilder();
  private final boolean indented;
  private int depth;
  private boolean first = true;
  private boolean afterKey;

  /** Indented, for whoever looks at it. */
  JsonWriter() {
    this(true);
  }

  private JsonWriter(boolean indented) {
    this.indented = indented;
  }

  /** With no line end and no blank outside its texts, so that a value takes one line. */
  static JsonWriter onOneLine() {
    return new JsonWriter(false);
  }

  JsonWriter object() {
    return open('{');
  }

  JsonWriter endObject() {
    return close('}');
  }

  JsonWriter array() {
    return open('[');
  }

  JsonWriter endArray() {
    return close(']');
  }

  JsonWriter key(String name) {
    before();
    quote(name);
    out.append(indented ? ": " : ":");
    afterKey = true;
    return this;
  }

  JsonWriter text(String value) {
    before();
    quote(value);
    return this;
  }

  JsonWriter number(long value) {
    before();
    out.append(value);
    return this;
  }

  /** A number with nine digits; {@code null} if it is not finite, for which JSON has no word. */
  JsonWriter number(double value) {
    if (!Double.isFinite(value)) {
      return nothing();
    }
    before();
    BigDecimal rounded = new BigDecimal(value).round(DIGITS).stripTrailingZeros();
    boolean plain = rounded.scale() <= 12 && rounded.precision() - rounded.scale() <= 12;
    out.append(plain ? rounded.toPlainString() : rounded.toString());
    return this;
  }

  JsonWriter truth(boolean value) {
    before();
    out.append(value);
    return this;
  }

  JsonWriter nothing() {
    before();
    out.append("null");
    return this;
  }

  JsonWriter texts(List<String> values) {
    array();
    values.forEach(this::text);
    return endArray();
  }

  /** What was written since it was last taken, which is then kept no longer. */
  String take() {
    String taken = out.toString();
    out.setLength(0);
    return taken;
  }

  /**
   * Writes a member of the array that is open, whole or not at all: if {@code member} throws, it is
   * as if it had not begun.
   */
  JsonWriter whole(Runnable member) {
    int length = out.length();
    int level = depth;
    boolean leads = first;
    boolean done = false;
    try {
      member.run();
      done = true;
    } finally {
      if (!done) {
        out.setLength(length);
        depth = level;
        first = leads;
        afterKey = false;
      }
    }
    return this;
  }

  @Override
  public String toString() {
    return out + "\n";
  }

  private JsonWriter open(char bracket) {
    before();
    out.append(bracket);
    depth++;
    first = true;
    return this;
  }

  private JsonWriter close(char bracket) {
    depth--;
    if (!first) {
      line();
    }
    out.append(bracket);
    first = false;
    return this;
  }

  private void before() {
    if (afterKey) {
      afterKey = false;
    } else if (depth > 0) {
      if (!first) {
        out.append(',');
      }
      line();
    }
    first = false;
  }

  private void line() {
    if (indented) {
      out.append('\n').append("  ".repeat(depth));
    }
  }

  private void quote(String value) {
    out.append('"');
    for (int i = 0; i < value.length(); i++) {
      char c = value.charAt(i);
      switch (c) {
        case '"' -> out.append("\\\"");
        case '\\' -> out.append("\\\\");
        case '\n' -> out.append("\\n");
        case '\r' -> out.append("\\r");
        case '\t' -> out.append("\\t");
        default -> {
          // A lone surrogate cannot be written as UTF-8; control characters may not stand bare.
          boolean bare = c >= 0x20 && c != 0x7f && (!Character.isSurrogate(c) || paired(value, i));
          if (bare) {
            out.append(c);
          } else {
            String hex = Integer.toHexString(c);
            out.append("\\u").append("0".repeat(4 - hex.length())).append(hex);
          }
        }
      }
    }
    out.append('"');
  }

  private static boolean paired(String value, int i) {
    return Character.isHighSurrogate(value.charAt(i))
        ? i + 1 < value.length() && Character.isLowSurrogate(value.charAt(i + 1))
        : i > 0 && Character.isHighSurrogate(value.charAt(i - 1));
  }
}
