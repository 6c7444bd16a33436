package org.coilwright.netlist;

import org.jspecify.annotations.Nullable;

/**
 * One pin of one part, written {@code K1.A1}.
 *
 * @param part designation of the part
 * @param pin the pin as the device is marked, always text
 */
public record Terminal(String part, String pin) implements Comparable<Terminal> {
  /** True for the pin of a line: {@code L}, {@code L1}, {@code L2}, {@code L3}. */
  public boolean isLine() {
    return isLine(pin);
  }

  /** True for the name of a line's pin. */
  public static boolean isLine(String pin) {
    return pin.startsWith("L");
  }

  // written out: what the compiler makes of a record is put together at run time, at each start
  @Override
  public boolean equals(@Nullable Object other) {
    return this == other
        || (other instanceof Terminal that && part.equals(that.part) && pin.equals(that.pin));
  }

  @Override
  public int hashCode() {
    return 31 * part.hashCode() + pin.hashCode();
  }

  @Override
  public String toString() {
    return part + "." + pin;
  }

  @Override
  public int compareTo(Terminal other) {
    int byPart = part.compareTo(other.part);
    return byPart != 0 ? byPart : pin.compareTo(other.pin);
  }
}
